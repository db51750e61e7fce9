package tautlog.desk.hours;

import java.math.BigDecimal;
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
import tautlog.rig.Opening;

/** Puts meters into words. */
public final class HoursPage {
    private static final String BEFORE_IS_UNKNOWN =
            " in these recordings; what was before them is not known here: each winch has its own opening reading.";

    private final HoursTable table;
    private final ZoneId zone;

    private HoursPage(HoursTable table, ZoneId zone) {
        this.table = table;
        this.zone = zone;
    }

    /** @param notes what a reader must know of how outings were put together */
    public static Document of(HoursTable table, ZoneId zone, List<String> notes) {
        return new HoursPage(table, zone).document(notes);
    }

    private Document document(List<String> notes) {
        List<Document.Section> sections = new ArrayList<>();
        sections.add(
                section("By outing", table.outings().stream().map(this::dated).toList(), table.outings()));
        if (!table.days().isEmpty()) {
            sections.add(section(
                    "By day", table.days().stream().map(HoursTable.Row::name).toList(), table.days()));
        }
        sections.add(section("In all", List.of("total"), List.of(table.total())));
        sections.add(new Document.Section("Meters", List.of(new Block.Bullets(meters()))));
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
        know.add("Hours worked while nothing was recorded are not in these figures.");
        sections.add(new Document.Section("Read this with the figures", List.of(new Block.Bullets(know))));
        return new Document(
                "Hours", List.of("Shaft at 60 rpm or more; pulls by share of the limit. Hours."), "", sections);
    }

    private String dated(HoursTable.Row row) {
        return row.start()
                .map(start -> DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT)
                        .format(start.atZone(zone)))
                .orElse(row.name());
    }

    private Document.Section section(String heading, List<String> names, List<HoursTable.Row> rows) {
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
        List<List<String>> first = new ArrayList<>();
        List<List<String>> second = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            first.add(meters(names.get(i), rows.get(i)));
            second.add(bands(names.get(i), rows.get(i)));
        }
        return new Document.Section(
                heading,
                List.of(
                        new Block.Table(heading + ": meters", meters, first),
                        new Block.Table(heading + ": time in pulls by share of the limit", bands, second)));
    }

    private static List<String> meters(String name, HoursTable.Row row) {
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

    private static List<String> bands(String name, HoursTable.Row row) {
        List<String> cells = new ArrayList<>(List.of(name));
        row.hours().bandHours().forEach(band -> cells.add(hours(OptionalDouble.of(band))));
        return cells;
    }

    private static String hours(OptionalDouble hours) {
        return hours.isPresent() ? String.format(Locale.ROOT, "%.3f", hours.getAsDouble()) : "unknown";
    }

    private List<String> meters() {
        List<String> meters = new ArrayList<>();
        Opening opening = table.opening().orElse(Opening.NONE);
        meters.add("Shaft: " + shaft(opening));
        meters.add("Pulls: "
                + sum(opening.pullHours(), table.total().hours().pullHours()) + " in "
                + Screen.counted(opening.pulls() + table.total().count("pull"), "pull")
                + (table.opening().isEmpty()
                        ? BEFORE_IS_UNKNOWN
                        : ", of which " + opening.pullHours().toPlainString() + " h in "
                                + Screen.counted(opening.pulls(), "pull") + " before the first recording."));
        meters.add(
                table.total().hours().jointHours().isEmpty()
                        ? "Joint, relative wear: not known; the rig does not describe drum, joint and shaft, or there is no"
                                + " shaft reading."
                        : "Joint, relative wear: "
                                + HoursSection.joint(table.total().hours())
                                + " at its rating; no life in hours follows from it.");
        return meters;
    }

    private String shaft(Opening opening) {
        OptionalDouble worked = table.total().hours().shaftHours();
        String before = opening.shaftHours().toPlainString() + " h before the first recording";
        if (worked.isEmpty()) {
            return table.opening().isEmpty() ? "not known" + BEFORE_IS_UNKNOWN : before + "; since then not known.";
        }
        return (table.total().hours().shaftIsAtLeast() ? "at least " : "")
                + sum(opening.shaftHours(), worked.getAsDouble())
                + (table.opening().isEmpty() ? BEFORE_IS_UNKNOWN : ", of which " + before + ".");
    }

    private static String sum(BigDecimal opening, double worked) {
        return String.format(Locale.ROOT, "%.2f h", opening.doubleValue() + worked);
    }
}
