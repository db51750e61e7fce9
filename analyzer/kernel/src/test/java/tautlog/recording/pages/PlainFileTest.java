package tautlog.recording.pages;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** SQLite itself is the oracle. */
class PlainFileTest {
    private static final String TABLE = "CREATE TABLE t (id INTEGER PRIMARY KEY, a INTEGER, b TEXT, c BLOB)";

    private static final int MANY = 1_000_000;

    @TempDir
    Path folder;

    private Path file(int pageSize, String... statements) throws SQLException {
        Path file = folder.resolve("f.db");
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA page_size = " + pageSize);
            for (String sql : statements) {
                statement.execute(sql);
            }
        }
        return file;
    }

    private static List<Row> rows(Path file) throws Exception {
        List<Table> tables = PlainFile.of(Files.readAllBytes(file)).tables();
        assertEquals(1, tables.size());
        assertEquals(TABLE, tables.get(0).definition());
        return tables.get(0).rows(MANY);
    }

    /** Row by row as SQLite tells them. */
    private static void assertAsSqliteTells(Path file) throws Exception {
        List<Row> found = rows(file);
        int at = 0;
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                ResultSet rows = connection.createStatement().executeQuery("SELECT id, a, b, c FROM t ORDER BY id")) {
            for (; rows.next(); at++) {
                Row row = found.get(at);
                assertEquals(4, row.columns());
                assertTrue(row.isNull(0) && row.isWholeNumber(1) && row.isText(2) && row.isBytes(3));
                assertEquals(rows.getLong(1), row.number());
                assertEquals(rows.getLong(2), row.wholeNumber(1));
                assertEquals(rows.getString(3), row.text(2));
                assertArrayEquals(rows.getBytes(3), row.bytes(2));
                assertArrayEquals(rows.getBytes(4), row.bytes(3));
            }
        }
        assertEquals(at, found.size());
    }

    private static void insert(Path file, List<Integer> sizes, long seed) throws SQLException {
        Random random = new Random(seed);
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file)) {
            connection.setAutoCommit(false);
            try (PreparedStatement insert =
                    connection.prepareStatement("INSERT INTO t (id, a, b, c) VALUES (?, ?, ?, ?)")) {
                long id = -5;
                for (int size : sizes) {
                    byte[] bytes = new byte[size];
                    random.nextBytes(bytes);
                    insert.setLong(1, id);
                    insert.setLong(2, random.nextLong() >> random.nextInt(64));
                    insert.setString(3, "ö".repeat(random.nextInt(40)));
                    insert.setBytes(4, bytes);
                    insert.execute();
                    id += 1L + random.nextInt(1 << random.nextInt(30));
                }
            }
            connection.commit();
        }
    }

    @Test
    void tellsRowsOfEveryLengthAsSqliteDoes() throws Exception {
        for (int pageSize : new int[] {512, 1_024, 4_096}) {
            List<Integer> sizes = new ArrayList<>();
            for (int size = 0; size < 3 * pageSize; size += pageSize == 512 ? 1 : 7) {
                sizes.add(size);
            }
            sizes.addAll(List.of(20_000, 0, 70_000));
            Path file = file(pageSize, TABLE);
            insert(file, sizes, pageSize);
            assertAsSqliteTells(file);
            Files.delete(file);
        }
    }

    @Test
    void tellsWhatManyChangesLeftBehind() throws Exception {
        Path file = file(1_024, TABLE);
        insert(file, new Random(3).ints(800, 0, 3_000).boxed().toList(), 3);
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            statement.execute("DELETE FROM t WHERE a % 3 = 0");
            statement.execute("UPDATE t SET c = substr(c, 1, 100) WHERE a % 5 = 0");
        }
        assertTrue(rows(file).size() > 300);
        assertAsSqliteTells(file);
    }

    @Test
    void tellsNumbersOfEveryWidth() throws Exception {
        Path file = file(1_024, TABLE);
        List<Long> numbers = new ArrayList<>(List.of(0L, 1L, -1L, Long.MIN_VALUE, Long.MAX_VALUE));
        for (int bits = 7; bits < 63; bits++) {
            numbers.addAll(List.of((1L << bits) - 1, 1L << bits, -(1L << bits), -(1L << bits) - 1));
        }
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                PreparedStatement insert =
                        connection.prepareStatement("INSERT INTO t (id, a, b, c) VALUES (?, ?, '', x'')")) {
            for (long number : numbers) {
                insert.setLong(1, number);
                insert.setLong(2, number);
                insert.execute();
            }
        }
        assertEquals(numbers.size(), rows(file).size());
        assertAsSqliteTells(file);
    }

    @Test
    void hasNoRowsWhereNoneAre() throws Exception {
        assertEquals(List.of(), rows(file(1_024, TABLE)));
    }

    @Test
    void refusesMoreRowsThanItMayTake() throws Exception {
        Path file = file(512, TABLE);
        insert(file, java.util.Collections.nCopies(300, 20), 1);
        Table table = PlainFile.of(Files.readAllBytes(file)).tables().get(0);
        assertEquals(300, table.rows(300).size());
        assertThrows(NotPlainException.class, () -> table.rows(299));
    }

    private static void assertNotPlain(Path file) {
        assertThrows(NotPlainException.class, () -> {
            for (Table table : PlainFile.of(Files.readAllBytes(file)).tables()) {
                table.rows(MANY);
            }
        });
    }

    @Test
    void leavesWhatIsOutOfTheOrdinaryToSqlite() throws Exception {
        for (String odd : List.of(
                "PRAGMA journal_mode = WAL",
                "CREATE INDEX i ON t (a)",
                "CREATE VIEW v AS SELECT 1",
                "INSERT INTO t (a) VALUES (1.5)",
                "CREATE TABLE u AS SELECT 1.5")) {
            Path file = file(1_024, TABLE, odd);
            assertNotPlain(file);
            Files.delete(file);
        }
        for (String other : List.of("PRAGMA auto_vacuum = FULL", "PRAGMA encoding = 'UTF-16'")) {
            Path file = file(1_024, other, TABLE);
            assertNotPlain(file);
            Files.delete(file);
        }
    }

    @Test
    void refusesEveryLengthButItsOwn() throws Exception {
        Path file = file(512, TABLE);
        insert(file, List.of(10, 2_000), 1);
        byte[] whole = Files.readAllBytes(file);
        for (int length = 0; length <= whole.length + 600; length++) {
            if (length != whole.length) {
                byte[] other = Arrays.copyOf(whole, length);
                assertThrows(NotPlainException.class, () -> PlainFile.of(other));
            }
        }
        PlainFile.of(whole);
    }

    /** Whatever bytes rot: rows, or word that it is not plain; never another exception, never without end. */
    @Test
    void endsWithRowsOrWithoutWhateverBytesRot() throws Exception {
        Path file = file(512, TABLE);
        insert(file, new Random(8).ints(60, 0, 900).boxed().toList(), 8);
        byte[] whole = Files.readAllBytes(file);
        Random random = new Random(9);
        int plain = 0;
        for (int i = 0; i < 20_000; i++) {
            byte[] copy = whole.clone();
            for (int k = random.nextInt(4); k >= 0; k--) {
                int page = random.nextInt(whole.length / 512) * 512;
                copy[page + random.nextInt(random.nextBoolean() ? 24 : 512)] = (byte) random.nextInt();
            }
            try {
                for (Table table : PlainFile.of(copy).tables()) {
                    for (Row row : table.rows(MANY)) {
                        row.bytes(row.columns() - 1);
                    }
                    plain++;
                }
            } catch (NotPlainException e) {
                assertTrue(String.valueOf(e.getMessage()).length() > 3);
            }
        }
        assertTrue(plain > 1_000 && plain < 19_000, plain + " of 20,000");
    }
}
