package tautlog.recording;

import static tautlog.recording.pages.NotPlainException.require;

import java.sql.SQLException;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import tautlog.recording.pages.NotPlainException;
import tautlog.recording.pages.PlainFile;
import tautlog.recording.pages.Row;
import tautlog.recording.pages.Table;

/**
 * Rows of a closed recording, out of its bytes. It is made only of a file whose every page that it will ask for is sound and whose tables
 * are those that a recorder makes, so that nothing can go wrong later; all else is SQLite's to read.
 */
final class PlainRows implements Rows {
    /** Chosen: a row takes some 250 bytes of memory beside the file's, so these 50 MB; a recording of a day has some thousand rows. */
    static final int MOST_ROWS = 200_000;

    private static final byte[] NONE = {};
    private static final int OUTING = 1;
    private static final int KIND = 3;
    private static final int LINK = EvidenceRow.NUMBERS;
    private static final int BLOCK = LINK + 1;

    private final String winch;
    private final String id;
    private final List<Row> evidence;
    private final List<Row> tails;
    private final List<Row> findings;

    private PlainRows(Map<StoredTable, List<Row>> rows) throws NotPlainException {
        require(shaped(rows, StoredTable.BEGUN, "NN").isEmpty(), "rows may be missing");
        List<Row> recording = shaped(rows, StoredTable.RECORDING, "TT");
        require(recording.size() == 1, "not one name");
        winch = recording.get(0).text(0);
        id = recording.get(0).text(1);
        evidence = shaped(rows, StoredTable.EVIDENCE, "-NNNNNNNNBB");
        tails = shaped(rows, StoredTable.TAIL, "-NNB");
        findings = shaped(rows, StoredTable.FINDING, "-NTNTN");
    }

    /**
     * @param bytes of a whole file; not copied, not modified
     * @throws NotPlainException if it is no recording of a version that can be read, not closed in order, damaged, or has tables of others
     */
    static PlainRows of(byte[] bytes) throws NotPlainException {
        PlainFile file = PlainFile.of(bytes);
        require(file.applicationId() == RecordingFile.APPLICATION_ID, "no recording");
        require(file.userVersion() <= RecordingFile.VERSION, "newer");
        Map<StoredTable, List<Row>> rows = new EnumMap<>(StoredTable.class);
        int left = MOST_ROWS;
        for (Table table : file.tables()) {
            StoredTable which = which(table);
            List<Row> found = which == StoredTable.SECONDS ? List.of() : table.rows(left);
            left -= found.size();
            require(rows.put(which, found) == null, "a table twice");
        }
        require(rows.size() == StoredTable.values().length, "tables are missing");
        return new PlainRows(rows);
    }

    private static StoredTable which(Table table) throws NotPlainException {
        Optional<StoredTable> found = Arrays.stream(StoredTable.values())
                .filter(known -> known.definition().equals(table.definition()))
                .findFirst();
        require(found.isPresent(), "a table of others");
        return found.get();
    }

    /** @param shape for each column: - the row's number, which is not stored twice; N a whole number; B bytes; T text */
    private static List<Row> shaped(Map<StoredTable, List<Row>> rows, StoredTable table, String shape)
            throws NotPlainException {
        List<Row> found = rows.getOrDefault(table, List.of());
        for (Row row : found) {
            require(row.columns() == shape.length(), "a row with other columns");
            for (int i = 0; i < shape.length(); i++) {
                require(fits(row, i, shape.charAt(i)), "a column of another type");
            }
        }
        return found;
    }

    private static boolean fits(Row row, int column, char type) {
        return switch (type) {
            case 'N' -> row.isWholeNumber(column);
            case 'B' -> row.isBytes(column);
            case 'T' -> row.isText(column);
            default -> row.isNull(column);
        };
    }

    @Override
    public String winch() {
        return winch;
    }

    @Override
    public String id() {
        return id;
    }

    @Override
    public long evidence(int outing, long first, long last, EvidenceTaker taker) throws SQLException {
        long latest = 0;
        for (Row row : evidence) {
            if (row.wholeNumber(OUTING) == outing && row.number() >= first && row.number() <= last) {
                latest = row.number();
                taker.take(EvidenceRow.of(numbers(row), row.bytes(LINK), row.bytes(BLOCK)));
            }
        }
        return latest;
    }

    @Override
    public long between(long row, long later) {
        return evidence.stream()
                .filter(one -> one.number() > row && one.number() < later)
                .count();
    }

    @Override
    public void heads(Consumer<EvidenceRow> taker) {
        for (Row row : evidence) {
            long kind = row.wholeNumber(KIND);
            boolean isLeftOut = kind == Block.Kind.SAMPLES.code() || kind == Block.Kind.SHAFT.code();
            taker.accept(EvidenceRow.of(numbers(row), NONE, isLeftOut ? NONE : row.bytes(BLOCK)));
        }
    }

    private static long[] numbers(Row row) {
        long[] numbers = new long[EvidenceRow.NUMBERS];
        numbers[0] = row.number();
        for (int i = 1; i < numbers.length; i++) {
            numbers[i] = row.wholeNumber(i);
        }
        return numbers;
    }

    @Override
    public List<Integer> outingsWithTails() {
        return tails.stream()
                .map(row -> (int) row.wholeNumber(OUTING))
                .distinct()
                .toList();
    }

    @Override
    public void tails(int outing, Taker taker) {
        for (Row row : tails) {
            if (row.wholeNumber(OUTING) == outing) {
                taker.take(new long[] {row.number(), row.wholeNumber(2)}, row.bytes(3));
            }
        }
    }

    @Override
    public void findings(int outing, Taker taker) {
        for (Row row : findings) {
            if (row.wholeNumber(OUTING) == outing) {
                taker.take(new long[] {row.number(), row.wholeNumber(3), row.wholeNumber(5)}, row.bytes(4));
            }
        }
    }
}
