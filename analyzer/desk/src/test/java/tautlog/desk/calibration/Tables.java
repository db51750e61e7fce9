package tautlog.desk.calibration;

import java.util.List;
import java.util.stream.Collectors;
import tautlog.config.ConfigException;

/** Tables of readings as a test needs them. */
final class Tables {
    private Tables() {}

    /** Rows of {@code load,counts,direction,run} in kilonewtons. */
    static LoadReadings kilonewtons(String... rows) throws ConfigException {
        String text = List.of(rows).stream()
                .map(row -> row.split(",", -1))
                .map(row -> row[0] + ",kN," + row[1] + "," + row[2] + "," + row[3])
                .collect(Collectors.joining("\n", "load,unit,counts,direction,run\n", "\n"));
        return ReadingsTable.parse("readings.csv", text);
    }

    static CalibrationStudy study(LoadReadings readings) throws ConfigException {
        return CalibrationStudy.of(readings, CalibrationRequest.PLAIN);
    }

    static List<String> kinds(CalibrationStudy study) {
        return study.cautions().stream().map(Caution::kind).toList();
    }
}
