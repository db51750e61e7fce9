package tautlog.desk.page;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import tautlog.desk.report.Report;

/** Hours worked and how heavily. */
public final class HoursSection {
    /** Heads of the load bands, in the order of {@link Report.Hours#bandHours}. */
    public static final List<String> BANDS = List.of("to 25 %", "to 50 %", "to 75 %", "to 100 %", "above");

    private final Report report;

    HoursSection(Report report) {
        this.report = report;
    }

    Document.Section section() {
        Report.Hours hours = report.hours();
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Table(
                "Hours",
                List.of(Block.Column.left("Meter"), Block.Column.right("Time")),
                List.of(
                        List.of("shaft turning", shaft(hours, hours.shaftHours())),
                        List.of("in pulls", Screen.hours(hours.pullHours())),
                        List.of("  of it winching", shaft(hours, hours.winchingHours())),
                        List.of("  of it held by the brake", shaft(hours, hours.heldHours())),
                        List.of("joint, relative wear", joint(hours)))));
        if (hours.shaftIsAtLeast()) {
            blocks.add(
                    new Block.Paragraph("Of some outings no shaft reading is known: the shaft's hours are those of the"
                            + " others, the joint's are not known."));
        }
        blocks.add(bands(hours));
        return new Document.Section("Hours", blocks);
    }

    private static String shaft(Report.Hours hours, OptionalDouble meter) {
        return (hours.shaftIsAtLeast() ? "at least " : "") + known(meter);
    }

    static String known(OptionalDouble hours) {
        return hours.isPresent() ? Screen.hours(hours.getAsDouble()) : "not known";
    }

    /** {@code at most 0.002 h}, rounded up: a bound is never shown below itself, nor as nothing when it is above. */
    public static String joint(Report.Hours hours) {
        return hours.jointHours().isEmpty()
                ? "not known"
                : (hours.jointIsAtMost() ? "at most " : "")
                        + BigDecimal.valueOf(hours.jointHours().getAsDouble())
                                .setScale(3, RoundingMode.CEILING)
                                .toPlainString()
                        + " h";
    }

    private static Block bands(Report.Hours hours) {
        List<Block.Column> columns = BANDS.stream().map(Block.Column::right).toList();
        List<String> cells = hours.bandHours().stream()
                .map(band -> String.format(Locale.ROOT, "%.3f h", band))
                .toList();
        return new Block.Table("Time in pulls by share of the limit", columns, List.of(cells));
    }
}
