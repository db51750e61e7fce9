package tautlog.desk.hours;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import tautlog.desk.report.JsonFields;
import tautlog.desk.report.JsonReport;

/** Meters as a table for a spreadsheet; unknown is an empty cell. Columns are added behind the others, never renamed. */
public final class HoursCsv {
    private static final List<String> KINDS = List.of("pull", "overload", "shock", "jolt", "drop", "stall");

    private HoursCsv() {}

    public static String render(List<Row> rows) {
        StringBuilder text = new StringBuilder();
        try (CSVPrinter table = new CSVPrinter(text, CSVFormat.RFC4180)) {
            table.printRecord(heads());
            for (Row row : rows) {
                table.printRecord(cells(row));
            }
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e); // a StringBuilder throws none
        }
        return text.toString();
    }

    private static List<String> heads() {
        List<String> heads = new ArrayList<>(List.of(
                "name", "start", "end", "shaft_h", "shaft_h_is_at_least", "pull_h", "winching_h", "held_h", "joint_h"));
        heads.add("joint_h_is_at_most");
        JsonReport.BAND_KEYS.forEach(band -> heads.add("band_" + band + "_h"));
        KINDS.forEach(kind -> heads.add(kind + "s"));
        heads.addAll(List.of("from_said_live", "logged_h", "gap_h", "no_shaft_h"));
        return heads;
    }

    private static List<String> cells(Row row) {
        List<String> cells = new ArrayList<>(List.of(row.name(), time(row.start()), time(row.end())));
        cells.add(number(row.meters().shaftHours()));
        cells.add(String.valueOf(row.meters().shaftIsAtLeast()));
        cells.add(JsonFields.number(row.meters().pullHours()));
        cells.add(number(row.meters().winchingHours()));
        cells.add(number(row.meters().heldHours()));
        cells.add(number(row.meters().jointHours()));
        cells.add(String.valueOf(row.meters().jointHoursAreAtMost()));
        row.meters().bandHours().forEach(band -> cells.add(JsonFields.number(band)));
        KINDS.forEach(kind -> cells.add(String.valueOf(row.count(kind))));
        cells.add(String.valueOf(row.fromSaidLive()));
        cells.add(JsonFields.number(row.coverage().logged().hours()));
        cells.add(JsonFields.number(row.coverage().gaps().hours()));
        cells.add(JsonFields.number(row.coverage().withoutShaft().hours()));
        return cells;
    }

    private static String time(Optional<java.time.Instant> time) {
        return time.map(JsonFields::time).orElse("");
    }

    private static String number(OptionalDouble value) {
        return value.isPresent() ? JsonFields.number(value.getAsDouble()) : "";
    }
}
