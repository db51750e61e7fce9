package tautlog.desk.hours;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import tautlog.desk.page.Block;
import tautlog.desk.page.Document;
import tautlog.desk.page.HoursSection;
import tautlog.desk.page.Screen;
import tautlog.usage.Coverage;

/** Puts meters into words. */
public final class HoursPage {
    private final HoursTable table;
    private final Look look;

    private HoursPage(HoursTable table, Look look) {
        this.table = table;
        this.look = look;
    }

    /**
     * How it is shown.
     *
     * @param zone of times
     * @param outings whether each outing has a row
     * @param periods which of them have rows
     * @param further sections behind the meters
     */
    public record Look(ZoneId zone, boolean outings, List<Period> periods, List<Document.Section> further) {
        public Look {
            periods = List.copyOf(periods);
            further = List.copyOf(further);
        }
    }

    /** @param notes what a reader must know of how outings were put together */
    public static Document of(HoursTable table, Look look, List<String> notes) {
        return new HoursPage(table, look).document(notes);
    }

    private Document document(List<String> notes) {
        List<Document.Section> sections = new ArrayList<>();
        if (look.outings()) {
            sections.add(section(
                    "By outing", table.outings().stream().map(this::dated).toList(), table.outings()));
        }
        for (Period period : look.periods()) {
            List<Row> rows = table.rows(period);
            if (!rows.isEmpty()) {
                sections.add(section(
                        "By " + period.name().toLowerCase(Locale.ROOT),
                        rows.stream().map(Row::name).toList(),
                        rows));
            }
        }
        sections.add(section("In all", List.of("total"), List.of(table.total())));
        sections.add(new Document.Section("Meters", List.of(new Block.Bullets(MeterSentences.of(table)))));
        sections.addAll(look.further());
        List<String> know = new ArrayList<>(notes);
        if (table.undated() > 0) {
            know.add(Screen.counted(table.undated(), "outing") + " without a clock: in the total, in no day.");
        }
        know.add(
                "A reading of the shaft speaks for the time until the next, at most 1 s; each start and each stop is off"
                        + " by at most that.");
        if (table.total().hours().shaftIsAtLeast()) {
            know.add(
                    "Of some outings no shaft reading is known: sums of shaft, winching and held hours are \"at least\", the"
                            + " joint's are not known.");
        }
        know.add(
                "No tension: time in gaps and of an open bridge. No shaft: time for which no shaft reading speaks. What was done in"
                        + " them is not known and in no other figure.");
        know.add(
                table.unlogged().entries() == 0
                        ? "Hours worked while nothing was recorded are not in these figures."
                        : "Hours worked while nothing was recorded are in the meters as the ledger tells them, in no table.");
        sections.add(new Document.Section("Read this with the figures", List.of(new Block.Bullets(know))));
        return new Document(
                "Hours", List.of("Shaft at 60 rpm or more; pulls by share of the limit. Hours."), "", sections);
    }

    private String dated(Row row) {
        return row.start()
                .map(start -> DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT)
                        .format(start.atZone(look.zone())))
                .orElse(row.name());
    }

    private Document.Section section(String heading, List<String> names, List<Row> rows) {
        List<Block.Column> meters = List.of(
                Block.Column.left(""),
                Block.Column.right("Shaft"),
                Block.Column.right("Pulls"),
                Block.Column.right("Winching"),
                Block.Column.right("Held"),
                Block.Column.right("n"),
                Block.Column.right("Over"),
                Block.Column.right("Shocks"));
        List<Block.Column> bands = new ArrayList<>(List.of(Block.Column.left("")));
        HoursSection.BANDS.forEach(band -> bands.add(Block.Column.right(band)));
        List<Block.Column> coverage = List.of(
                Block.Column.left(""),
                Block.Column.right("Logged"),
                Block.Column.right("No tension"),
                Block.Column.right("No shaft"));
        List<List<String>> first = new ArrayList<>();
        List<List<String>> second = new ArrayList<>();
        List<List<String>> third = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            first.add(meters(names.get(i), rows.get(i)));
            second.add(bands(names.get(i), rows.get(i)));
            third.add(coverage(names.get(i), rows.get(i).coverage()));
        }
        return new Document.Section(
                heading,
                List.of(
                        new Block.Table(heading + ": meters", meters, first),
                        new Block.Table(heading + ": time in pulls by share of the limit", bands, second),
                        new Block.Table(heading + ": time logged, and what of it is not known", coverage, third)));
    }

    private static List<String> coverage(String name, Coverage coverage) {
        return List.of(
                name,
                hours(OptionalDouble.of(coverage.logged().hours())),
                hours(OptionalDouble.of(coverage.gaps().hours())),
                hours(OptionalDouble.of(coverage.withoutShaft().hours())));
    }

    private static List<String> meters(String name, Row row) {
        return List.of(
                name,
                hours(row.hours().shaftHours()),
                hours(OptionalDouble.of(row.hours().pullHours())),
                hours(row.hours().winchingHours()),
                hours(row.hours().heldHours()),
                String.valueOf(row.count("pull")),
                String.valueOf(row.count("overload")),
                String.valueOf(row.count("shock")));
    }

    private static List<String> bands(String name, Row row) {
        List<String> cells = new ArrayList<>(List.of(name));
        row.hours().bandHours().forEach(band -> cells.add(hours(OptionalDouble.of(band))));
        return cells;
    }

    private static String hours(OptionalDouble hours) {
        return hours.isPresent() ? String.format(Locale.ROOT, "%.3f", hours.getAsDouble()) : "unknown";
    }
}
