package tautlog.desk.exporting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.StringJoiner;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.exporting.parquet.ParquetTables;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.fixtures.ShortDay;
import tautlog.desk.report.JsonFields;

/** Every cell of the Parquet file, as another engine (DuckDB) reads it, is that of the text table. */
class ParquetExportTest {
    @TempDir
    Path folder;

    private Path parquet(Path recording, String... options) {
        Path file = folder.resolve("table.parquet");
        List<Object> arguments = new ArrayList<>(List.of("export", recording, "--parquet", file));
        arguments.addAll(List.of(options));
        Desk run = Desk.run(arguments.toArray());
        assertEquals(0, run.code(), run.err());
        assertTrue(run.err().isEmpty(), run.err());
        return file;
    }

    private static List<String> csv(Path recording, String... options) {
        List<Object> arguments = new ArrayList<>(List.of("export", recording, "--csv", "-"));
        arguments.addAll(List.of(options));
        return Desk.run(arguments.toArray()).out().lines().toList();
    }

    private interface Question<T> {
        T ask(Statement engine) throws SQLException;
    }

    private static <T> T asked(Question<T> question) throws SQLException {
        try (Connection engine = DriverManager.getConnection("jdbc:duckdb:");
                Statement statement = engine.createStatement()) {
            statement.execute("SET TimeZone = 'UTC'");
            return question.ask(statement);
        }
    }

    private static List<List<String>> query(String sql) throws SQLException {
        return asked(engine -> {
            List<List<String>> rows = new ArrayList<>();
            try (ResultSet result = engine.executeQuery(sql)) {
                while (result.next()) {
                    List<String> row = new ArrayList<>();
                    for (int i = 1; i <= result.getMetaData().getColumnCount(); i++) {
                        row.add(String.valueOf(result.getObject(i)));
                    }
                    rows.add(row);
                }
            }
            return rows;
        });
    }

    /** The file as the text table would show it; times are asked for as whole microseconds. */
    private static List<String> asText(Path file) throws SQLException {
        String all = "SELECT * REPLACE (epoch_us(utc) AS utc) FROM '" + file + "'";
        return asked(engine -> {
            List<String> rows = new ArrayList<>();
            try (ResultSet result = engine.executeQuery(all)) {
                int columns = result.getMetaData().getColumnCount();
                StringJoiner head = new StringJoiner(",");
                for (int i = 1; i <= columns; i++) {
                    head.add(result.getMetaData().getColumnName(i));
                }
                rows.add(head.toString());
                while (result.next()) {
                    StringJoiner row = new StringJoiner(",");
                    for (int i = 1; i <= columns; i++) {
                        row.add(cell(result, i));
                    }
                    rows.add(row.toString());
                }
            }
            return rows;
        });
    }

    private static String cell(ResultSet result, int column) throws SQLException {
        Object value = result.getObject(column);
        String name = result.getMetaData().getColumnName(column);
        if (value == null) {
            return "";
        }
        if (name.equals("utc")) {
            long micros = ((Number) value).longValue();
            return JsonFields.time(
                    Instant.ofEpochSecond(Math.floorDiv(micros, 1_000_000), Math.floorMod(micros, 1_000_000) * 1_000L));
        }
        if (name.endsWith("_deg")) {
            return String.format(Locale.ROOT, "%.7f", (Double) value);
        }
        return value instanceof Double number ? JsonFields.number(number) : String.valueOf(value);
    }

    @Test
    void everySampleOfADayIsReadBackAsTheTextTableHasIt() throws Exception {
        Path recording = SampleDay.write(folder);

        List<String> read = asText(parquet(recording));

        // 60 s at 500 Hz less a gap of 200, and one sample more for the spike
        assertEquals(30_001 - 200, read.size() - 1);
        assertEquals(csv(recording), read);
    }

    @Test
    void everySecondIsReadBackAsTheTextTableHasIt() throws Exception {
        Path recording = SampleDay.write(folder);

        List<String> read = asText(parquet(recording, "--seconds"));

        assertEquals(61, read.size() - 1);
        assertEquals(csv(recording, "--seconds"), read);
    }

    @Test
    void placesAreReadBack() throws Exception {
        Path recording = ShortDay.write(folder, "p.tautlog", day -> {
            day.position(471_234_567, -81_234_567);
            day.hold(3, 2_000);
        });

        List<String> read = asText(parquet(recording, "--seconds"));

        assertTrue(read.get(1).endsWith(",47.1234567,-8.1234567"), read.get(1));
        assertEquals(csv(recording, "--seconds"), read);
    }

    @Test
    void columnsHaveTheirTypes() throws Exception {
        Path file = parquet(SampleDay.write(folder));

        List<List<String>> types =
                query("SELECT column_name, column_type FROM (DESCRIBE SELECT * FROM '" + file + "')");

        assertEquals(
                List.of(
                        List.of("outing", "INTEGER"),
                        List.of("number", "BIGINT"),
                        List.of("tick", "BIGINT"),
                        List.of("utc", "TIMESTAMP WITH TIME ZONE"),
                        List.of("counts", "INTEGER"),
                        List.of("tension_n", "DOUBLE"),
                        List.of("hookup", "VARCHAR"),
                        List.of("limit_n", "DOUBLE"),
                        List.of("share", "DOUBLE"),
                        List.of("flags", "VARCHAR"),
                        List.of("limit_is_at_most", "BOOLEAN"),
                        List.of("assumed", "BOOLEAN")),
                types);
    }

    @Test
    void pagesAreCompressedWordsAreADictionaryAndNumbersAreDifferences() throws Exception {
        Path file = parquet(SampleDay.write(folder));

        List<List<String>> chunks =
                query("SELECT path_in_schema, compression, encodings FROM parquet_metadata('" + file + "')");

        chunks.forEach(chunk -> assertEquals("ZSTD", chunk.get(1), chunk.toString()));
        assertTrue(encodings(chunks, "hookup").contains("DICTIONARY"), chunks.toString());
        assertTrue(encodings(chunks, "number").contains("DELTA_BINARY_PACKED"), chunks.toString());
    }

    private static String encodings(List<List<String>> chunks, String column) {
        return chunks.stream()
                .filter(chunk -> chunk.get(0).equals(column))
                .findFirst()
                .orElseThrow()
                .get(2);
    }

    @Test
    void aGapHasNoRowsAndTheSameBytesComeAgain() throws Exception {
        Path recording = SampleDay.write(folder);
        Path file = parquet(recording);
        byte[] once = Files.readAllBytes(file);

        List<List<String>> inTheGap =
                query("SELECT count(*) FROM '" + file + "' WHERE number >= 14500 AND number < 14700");

        assertEquals(List.of(List.of("0")), inTheGap);
        assertEquals(
                List.of(List.of("1", "1")),
                query("SELECT count(*) FILTER (number = 14499), count(*) FILTER (number = 14700) FROM '" + file + "'"));
        assertEquals(-1, java.util.Arrays.mismatch(once, Files.readAllBytes(parquet(recording))));
    }

    @Test
    void theLineOfSqlInTheReadmeGivesTheGreatestTensionOfEachHookup() throws Exception {
        Path file = parquet(SampleDay.write(folder));

        List<List<String>> greatest = query(ofReadme("samples.parquet", file));

        assertEquals(
                List.of("round-the-corner", "straight"),
                greatest.stream().map(row -> row.get(0)).toList());
        assertEquals(
                33_000 / SampleDay.LIMIT_NEWTONS,
                Double.parseDouble(greatest.get(1).get(2)),
                0.001);
    }

    /** The one for samples does not fit a file of seconds, whose columns are others. */
    @Test
    void theLineForSecondsGivesTheSame() throws Exception {
        Path recording = SampleDay.write(folder);
        Path samples = parquet(recording);
        Path seconds = folder.resolve("seconds.parquet");
        assertEquals(
                0,
                Desk.run("export", recording, "--seconds", "--parquet", seconds).code());

        List<List<String>> greatest = query(ofReadme("seconds.parquet", seconds));

        assertEquals(query(ofReadme("samples.parquet", samples)), greatest);
    }

    private static String ofReadme(String name, Path file) throws IOException {
        String line = Files.readString(Path.of(System.getProperty("tautlog.root"), "README.md"))
                .lines()
                .filter(text -> text.contains("FROM '" + name + "'"))
                .findFirst()
                .orElseThrow();
        return line.strip().replace(name, file.toString());
    }

    /** Three columns of random longs, 24 bytes a row that nothing can shorten: 800,000 rows are more than 16 MB. */
    @Test
    void aLongTableIsCutIntoRowGroups() throws Exception {
        Path file = folder.resolve("long.parquet");
        Random random = new Random(1);
        List<Column> columns = List.of(
                new Column("a", Column.Type.LONG),
                new Column("b", Column.Type.LONG),
                new Column("c", Column.Type.LONG));
        try (Cells cells = new ParquetTables(file).begin(columns)) {
            for (int row = 0; row < 800_000; row++) {
                cells.whole(random.nextLong());
                cells.whole(random.nextLong());
                cells.whole(random.nextLong());
                cells.endRow();
            }
        }

        assertEquals(
                List.of(List.of("2", "800000")),
                query("SELECT num_row_groups, num_rows FROM parquet_file_metadata('" + file + "')"));
    }

    @Test
    void aRowWithTooFewCellsIsABug() throws Exception {
        try (Cells cells = new ParquetTables(folder.resolve("bug.parquet"))
                .begin(List.of(new Column("a", Column.Type.LONG), new Column("b", Column.Type.LONG)))) {
            cells.whole(1);

            assertThrows(IllegalStateException.class, cells::endRow);
        }
    }

    @Test
    void aTableWithoutRowsIsAFileWithItsColumns() throws Exception {
        Path file = folder.resolve("none.parquet");
        new ParquetTables(file).begin(SampleRows.COLUMNS).close();

        assertEquals(
                List.of(SampleRows.COLUMNS.stream().map(Column::name).collect(Collectors.joining(","))), asText(file));
    }

    @Test
    void whereItDoesNotGoIsToldBeforeAnythingIsWritten() throws IOException {
        Path recording = SampleDay.write(folder);

        assertEquals(2, Desk.run("export", recording).code());
        assertEquals(2, Desk.run("export", recording, "--parquet", "-").code());
        assertEquals(
                2,
                Desk.run("export", recording, "--parquet", "x.parquet", "--csv", "x.csv")
                        .code());
        Desk onto = Desk.run("export", recording, "--parquet", recording);
        assertEquals(2, onto.code());
        assertTrue(onto.err().contains("never overwritten"), onto.err());
        assertFalse(Files.exists(Path.of("x.parquet")));
    }

    @Test
    void aFolderThatIsNotThereIsNamed() throws IOException {
        Desk run = Desk.run("export", SampleDay.write(folder), "--parquet", folder.resolve("no/such/t.parquet"));

        assertEquals(3, run.code());
        assertTrue(run.err().contains("t.parquet"), run.err());
    }
}
