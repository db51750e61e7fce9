package tautlog.recording;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Locale;
import tautlog.calibration.CellCalibration;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;

/** Prints the bytes a sample of whole recordings and of what they hold. Arguments: seconds to record (default 1,800). */
public final class RecordingSize {
    private RecordingSize() {}

    public static void main(String[] arguments) throws IOException, SQLException {
        int seconds = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 3_600;
        measure("noise ±8 counts, 1 N a count", 8, 1, seconds, BenchTrace::tell);
        measure("noise ±8 counts, samples alone", 8, 1, seconds, BenchTrace::tellSamples);
        measure("noise ±2,000 counts, 0.01 N a count", 2_000, 100, seconds, BenchTrace::tell);
        measure("noise ±2,000 counts, samples alone", 2_000, 100, seconds, BenchTrace::tellSamples);
    }

    /** What of a trace is told. */
    private interface Telling {
        void tell(BenchTrace trace, OutingWriter outing, int seconds) throws RecordingException;
    }

    private static void measure(String name, int noise, double countsPerNewton, int seconds, Telling telling)
            throws IOException, SQLException {
        Path folder = Files.createTempDirectory("tautlog-size");
        Path file = folder.resolve("size.tautlog");
        try {
            record(file, noise, countsPerNewton, seconds, telling);
            print(name, file, 500.0 * seconds);
            Packer.pack(file);
            print(name + ", packed", file, 500.0 * seconds);
        } finally {
            Files.deleteIfExists(file);
            Files.delete(folder);
        }
    }

    private static void print(String name, Path file, double samples) throws IOException, SQLException {
        System.out.printf(Locale.ROOT, "%s: %.3f bytes a sample in the whole file%n", name, Files.size(file) / samples);
        try (Connection connection = RecordingFile.openForReading(file);
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(
                        "SELECT 'evidence of kind ' || kind, count(*), sum(length(block)) FROM evidence GROUP BY kind"
                                + " UNION ALL SELECT 'seconds', count(*), sum(length(block)) FROM seconds"
                                + " UNION ALL SELECT 'free pages', (SELECT freelist_count FROM pragma_freelist_count()),"
                                + " (SELECT page_size FROM pragma_page_size())"
                                + " * (SELECT freelist_count FROM pragma_freelist_count())")) {
            while (rows.next()) {
                System.out.printf(
                        Locale.ROOT,
                        "  %-20s %5d rows %.4f%n",
                        rows.getString(1),
                        rows.getLong(2),
                        rows.getLong(3) / samples);
            }
        }
    }

    private static void record(Path file, int noise, double countsPerNewton, int seconds, Telling telling)
            throws IOException {
        Instrument instrument = new Instrument("TL-0001", 1, 0, 7, 1_000_000, 500_000, 8_388_607, 6);
        OutingStart start = new OutingStart(
                instrument,
                "# the rig's text, 2 kB\n".repeat(90),
                CellCalibration.written(Calibration.of("0", "1")),
                "bench",
                OutingStart.Source.INSTRUMENT);
        try (RecordingWriter writer = RecordingWriter.open(file, "bench")) {
            OutingWriter outing = writer.begin(start);
            telling.tell(new BenchTrace(1, noise, countsPerNewton), outing, seconds);
            outing.end();
            outing.commit();
        }
    }
}
