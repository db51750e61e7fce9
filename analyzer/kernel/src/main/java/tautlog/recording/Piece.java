package tautlog.recording;

import java.util.Arrays;

/**
 * How some neighbouring counts of a packed block are foretold: a line, which leans after what it got wrong by one of {@link #GAINS}. Only
 * what is left over is stored. All arithmetic is that of 32 bits and wraps: whatever is foretold, the counts come back exact.
 *
 * <pre>
 *   level = 128, step = slope
 *   for each count   foretold = base + (level >> 8)    error = count − foretold
 *                    level += step + error · gain      step += error · lean
 * </pre>
 *
 * @param n how many counts
 * @param gain index in {@link #GAINS}
 * @param shift so many low bits of each error are stored as they are, the rest as a symbol; {@link #EXACT} when no error is stored
 * @param base what the first count should be
 * @param slope counts from one to the next, in 1/256
 */
record Piece(int n, int gain, int shift, int base, int slope) {
    /** Every count is as foretold. */
    static final int EXACT = -1;
    /** An error of 32 bits less the 6 that a symbol tells. */
    static final int GREATEST_SHIFT = 26;

    private static final int FRACTION = 8;
    private static final int HALF = 1 << (FRACTION - 1);

    /**
     * Gain and lean in 1/256. None: a plain line, best for noise round a steady or evenly moving level. The last but one: the count before.
     * The last: as far from the count before as that was from the one before it. Between them, levels that move as they will.
     */
    private static final int[][] GAINS = {
        {0, 0}, {16, 1}, {32, 2}, {64, 8}, {128, 32}, {192, 96}, {256, 0}, {256, 256},
    };

    static final int LINE = 0;
    static final int GREATEST_GAIN = GAINS.length - 1;

    /** The same with its base so much greater. */
    Piece from(int expected) {
        return new Piece(n, gain, shift, base + expected, slope);
    }

    /** Writes what is left over of {@code n} counts to {@code errors}; what the next count should be. */
    int errors(int[] counts, int at, int[] errors) {
        return gain == LINE ? errorsOfLine(counts, at, errors) : errorsLeaning(counts, at, errors);
    }

    private int errorsOfLine(int[] counts, int at, int[] errors) {
        int level = HALF;
        for (int i = 0; i < n; i++) {
            errors[i] = counts[at + i] - (base + (level >> FRACTION));
            level += slope;
        }
        return base + (level >> FRACTION);
    }

    private int errorsLeaning(int[] counts, int at, int[] errors) {
        int gainOf = GAINS[gain][0];
        int lean = GAINS[gain][1];
        int level = HALF;
        int step = slope;
        for (int i = 0; i < n; i++) {
            int error = counts[at + i] - (base + (level >> FRACTION));
            errors[i] = error;
            level += step + error * gainOf;
            step += error * lean;
        }
        return base + (level >> FRACTION);
    }

    /**
     * Works counts out; what the next count should be.
     *
     * @param symbols from {@code from} on, less the low bits of each error; not looked at when {@link #EXACT}
     * @param counts from {@code at} on, holds the low bits when there are any, and the counts afterwards
     */
    int restore(byte[] symbols, int from, int[] counts, int at) {
        if (shift == EXACT) {
            return restoreExact(counts, at);
        }
        if (shift == 0) {
            return gain == LINE ? restoreLine(symbols, from, counts, at) : restoreLeaning(symbols, from, counts, at);
        }
        for (int i = 0; i < n; i++) {
            counts[at + i] += symbols[from + i] << shift;
        }
        return gain == LINE ? addLine(counts, at) : addLeaning(counts, at);
    }

    private int restoreExact(int[] counts, int at) {
        Arrays.fill(counts, at, at + n, 0);
        return addLine(counts, at);
    }

    private int restoreLine(byte[] symbols, int from, int[] counts, int at) {
        if (slope == 0) {
            for (int i = 0; i < n; i++) {
                counts[at + i] = symbols[from + i] + base;
            }
            return base;
        }
        int level = HALF;
        for (int i = 0; i < n; i++) {
            counts[at + i] = symbols[from + i] + base + (level >> FRACTION);
            level += slope;
        }
        return base + (level >> FRACTION);
    }

    private int restoreLeaning(byte[] symbols, int from, int[] counts, int at) {
        int gainOf = GAINS[gain][0];
        int lean = GAINS[gain][1];
        int level = HALF;
        int step = slope;
        for (int i = 0; i < n; i++) {
            int error = symbols[from + i];
            counts[at + i] = base + (level >> FRACTION) + error;
            level += step + error * gainOf;
            step += error * lean;
        }
        return base + (level >> FRACTION);
    }

    private int addLine(int[] counts, int at) {
        int level = HALF;
        for (int i = 0; i < n; i++) {
            counts[at + i] += base + (level >> FRACTION);
            level += slope;
        }
        return base + (level >> FRACTION);
    }

    private int addLeaning(int[] counts, int at) {
        int gainOf = GAINS[gain][0];
        int lean = GAINS[gain][1];
        int level = HALF;
        int step = slope;
        for (int i = 0; i < n; i++) {
            int error = counts[at + i];
            counts[at + i] = base + (level >> FRACTION) + error;
            level += step + error * gainOf;
            step += error * lean;
        }
        return base + (level >> FRACTION);
    }
}
