package tautlog.recording;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.OptionalLong;

/** A row of the table {@code evidence}: a block, its link, and an index of what it reaches over. */
@SuppressWarnings("ArrayRecordComponent") // moved about, never compared
record EvidenceRow(long seq, int outing, int span, int kind, Reach reach, int count, byte[] link, byte[] bytes) {
    static final String SELECT =
            "SELECT seq, outing, span, kind, first, last, tick, last_tick, count, link, block FROM evidence";

    /** How many columns, from the first on, are whole numbers. */
    static final int NUMBERS = 9;

    /** Most rows are samples and shaft, whose blocks are left out; as are all links. */
    static final String SELECT_HEADS = "SELECT seq, outing, span, kind, first, last, tick, last_tick, count, NULL,"
            + " CASE WHEN kind IN (2, 3) THEN NULL ELSE block END FROM evidence";

    static EvidenceRow of(ResultSet row) throws SQLException {
        return of(numbers(row, 1, NUMBERS), bytes(row, NUMBERS + 1), bytes(row, NUMBERS + 2));
    }

    /** @param numbers the first columns, as {@link #SELECT} names them */
    static EvidenceRow of(long[] numbers, byte[] link, byte[] block) {
        return new EvidenceRow(
                numbers[0],
                (int) numbers[1],
                (int) numbers[2],
                (int) numbers[3],
                new Reach(numbers[4], numbers[5], numbers[6], numbers[7]),
                (int) numbers[8],
                link,
                block);
    }

    /** {@code n} columns from {@code first} on; in a loop, as each call of a driver's getter is a lot of code to compile. */
    static long[] numbers(ResultSet row, int first, int n) throws SQLException {
        long[] numbers = new long[n];
        for (int i = 0; i < n; i++) {
            numbers[i] = row.getLong(first + i);
        }
        return numbers;
    }

    /** A blob; empty when damage made it something else. */
    static byte[] bytes(ResultSet row, int column) throws SQLException {
        byte[] bytes = row.getBytes(column);
        return bytes == null ? new byte[0] : bytes;
    }

    /** The block, checked against its CRC and against the row that holds it. */
    Block open() throws DamagedBlockException {
        Block block = Block.read(bytes, 0);
        if (block.size() != bytes.length) {
            throw new DamagedBlockException((bytes.length - block.size()) + " bytes follow it");
        }
        if (block.kind().code() != kind || block.outing() != outing || block.span() != span || block.count() != count) {
            throw new DamagedBlockException("it stands in a row of another kind, outing, span or count");
        }
        return block;
    }

    boolean is(Block.Kind wanted) {
        return kind == wanted.code();
    }

    String place() {
        try {
            return Block.Kind.of(kind).word() + " block " + seq;
        } catch (DamagedBlockException e) {
            return "block " + seq + " (" + e.getMessage() + ")";
        }
    }

    Damage damage(Outing of, String reason) {
        boolean covers = is(Block.Kind.SAMPLES);
        return new Damage(
                outing,
                place(),
                covers ? reach.firstNumber() : 0,
                covers ? reach.lastNumber() : -1,
                time(of.utcMicros(reach.firstTick())),
                reason);
    }

    /**
     * That rows before this one are gone; this one itself is sound.
     *
     * @param first of those missing, up to this one
     */
    Damage missingBefore(long first, String time) {
        String reason = first == seq - 1
                ? "row " + first + " before it is missing"
                : "the rows " + first + " to " + (seq - 1) + " before it are missing";
        return new Damage(outing, place(), 0, -1, time, reason);
    }

    static Damage tailDamage(Outing of, long id, String reason) {
        return new Damage(of.index(), "tail row " + id, 0, -1, time(of.utcMicros(of.lastTick())), reason);
    }

    static String time(OptionalLong utcMicros) {
        return utcMicros.isEmpty()
                ? "time unknown"
                : Instant.EPOCH
                        .plusSeconds(Math.floorDiv(utcMicros.getAsLong(), 1_000_000L))
                        .plusNanos(Math.floorMod(utcMicros.getAsLong(), 1_000_000L) * 1_000)
                        .toString();
    }
}
