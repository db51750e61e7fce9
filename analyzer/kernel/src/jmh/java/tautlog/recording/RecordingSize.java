package tautlog.recording;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
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

/** Prints the bytes a sample of whole recordings and of what they hold. Arguments: seconds to record (default 3,600). */
public final class RecordingSize {
    private static final Instrument INSTRUMENT = new Instrument("TL-0001", 1, 0, 7, 1_000_000, 500_000, 8_388_607, 6);

    private RecordingSize() {}

    public static void main(String[] arguments) throws IOException, SQLException {
        int seconds = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 3_600;
        noise("noise ±8 counts, 1 N a count", 8, 1, seconds);
        noise("noise ±2,000 counts, 0.01 N a count", 2_000, 100, seconds);
    }

    private static void noise(String name, int noise, int countsPerNewton, int seconds)
            throws IOException, SQLException {
        Calibration calibration = calibration(countsPerNewton);
        measure(name + ", seconds", noise, countsPerNewton, seconds, (trace, outing) -> {
            DetectedOuting detected = new DetectedOuting(outing, INSTRUMENT, calibration, DetectedOuting.Said.SECONDS);
            trace.tell(detected, outing, seconds);
            detected.end();
        });
        measure(name + ", seconds and findings", noise, countsPerNewton, seconds, (trace, outing) -> {
            DetectedOuting detected = new DetectedOuting(outing, INSTRUMENT, calibration, DetectedOuting.Said.ALL);
            trace.tell(detected, outing, seconds);
            detected.end();
        });
        measure(
                name + ", samples alone",
                noise,
                countsPerNewton,
                seconds,
                (trace, outing) -> trace.tellSamples(outing, seconds));
    }

    /** With as many digits as a fit gives: shares take as many bits as they do under a real one. */
    private static Calibration calibration(int countsPerNewton) {
        return new Calibration(
                new BigDecimal("12.122770761567"),
                BigDecimal.ONE.divide(
                        new BigDecimal("1.0007297512437811").multiply(BigDecimal.valueOf(countsPerNewton)),
                        MathContext.DECIMAL128));
    }

    /** What of a trace is told. */
    private interface Telling {
        void tell(BenchTrace trace, OutingWriter outing) throws RecordingException;
    }

    private static void measure(String name, int noise, int countsPerNewton, int seconds, Telling telling)
            throws IOException, SQLException {
        Path folder = Files.createTempDirectory("tautlog-size");
        Path file = folder.resolve("size.tautlog");
        try {
            record(file, noise, countsPerNewton, telling);
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
                                + " UNION ALL SELECT 'findings', count(*), sum(length(kind) + length(json) + 8) FROM finding"
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

    private static void record(Path file, int noise, int countsPerNewton, Telling telling) throws IOException {
        OutingStart start = new OutingStart(
                INSTRUMENT,
                "# the rig's text, 2 kB\n".repeat(90),
                CellCalibration.written(calibration(countsPerNewton)),
                "bench",
                OutingStart.Source.INSTRUMENT);
        try (RecordingWriter writer = RecordingWriter.open(file, "bench")) {
            OutingWriter outing = writer.begin(start);
            telling.tell(new BenchTrace(1, noise, countsPerNewton), outing);
            outing.end();
            outing.commit();
        }
    }
}
