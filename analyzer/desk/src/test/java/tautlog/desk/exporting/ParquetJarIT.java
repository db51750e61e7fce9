package tautlog.desk.exporting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.SampleDay;

/** The packaged program writes Parquet with what is in {@code lib}: the tests' class path has more than is shipped. */
class ParquetJarIT {
    private static final Path TARGET = Path.of(System.getProperty("tautlog.root"), "analyzer", "desk", "target");

    @TempDir
    Path folder;

    @Test
    void theShippedLibrariesSuffice() throws Exception {
        Path file = folder.resolve("samples.parquet");
        Path errors = folder.resolve("err");
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        Process program = new ProcessBuilder(
                        java,
                        "-jar",
                        TARGET.resolve("tautlog.jar").toString(),
                        "export",
                        SampleDay.write(folder).toString(),
                        "--parquet",
                        file.toString())
                .redirectError(errors.toFile())
                .start();

        assertTrue(program.waitFor(2, TimeUnit.MINUTES), "tautlog export ends within two minutes");
        assertEquals("", Files.readString(errors));
        assertEquals(0, program.exitValue());
        try (Connection engine = DriverManager.getConnection("jdbc:duckdb:");
                Statement statement = engine.createStatement();
                ResultSet count = statement.executeQuery("SELECT count(*) FROM '" + file + "'")) {
            assertTrue(count.next());
            assertEquals(30_001 - 200, count.getLong(1));
        }
    }
}
