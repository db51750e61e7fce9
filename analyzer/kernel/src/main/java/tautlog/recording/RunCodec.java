package tautlog.recording;

import java.lang.invoke.VarHandle;

/**
 * Codes a run of at most 128 counts: whichever takes the fewest bytes of
 *
 * <pre>
 *   LEVEL   count − least
 *   LINE    count − (base + (i · slope >> 8))      a ramp
 *   STEP    difference to the count before − least difference
 * </pre>
 *
 * in a fixed number of bits. Least, greatest, kind and width of every run stand in the block's directory, so that a reader
 * can pass over runs that cannot matter to it. Layout: {@code analyzer/RECORDING.md}, "Runs".
 */
final class RunCodec {
    /** Samples in a full run. */
    static final int RUN = 128;

    static final int LEVEL = 0;
    static final int LINE = 1;
    static final int STEP = 2;

    private static final VarHandle LONG = ByteReader.LONG;
    /** 0, 1, 2 … 127 as i32: read beside counts, they do not keep the compiler from vectors, as a loop's own number does. */
    private static final byte[] PLACES = places();
    /** Four numbers of so many bits lie in any eight bytes, wherever in the first of them they begin. */
    private static final int FOUR_IN_ONE = 14;

    private static final int GREATEST_SLOPE = 1 << 22;

    private final long[] work = new long[RUN];

    // what measure() found
    private int least;
    private int greatest;
    private long leastStep;
    private int stepWidth;
    private int slope;
    private int lineBase;
    private int lineWidth;

    private static byte[] places() {
        ByteWriter places = new ByteWriter();
        for (int i = 0; i < RUN; i++) {
            places.i32(i);
        }
        return places.toBytes();
    }

    /** Appends one run: its entry to {@code directory}, its numbers to {@code bits}. */
    void encode(int[] counts, int from, int n, RunDirectory directory, RunBits bits) {
        measure(counts, from, n);
        int levelWidth = bits((long) greatest - least);
        int levelCost = bytes(n, levelWidth);
        int lineCost = bytes(n, lineWidth) + 4;
        int stepCost = bytes(n, stepWidth) + 4; // no less than a line of that width, which is read in half the time
        if (levelCost <= lineCost && levelCost <= stepCost) {
            directory.addLevel(least, greatest, levelWidth);
            encodeLevel(counts, from, n, levelWidth, bits);
        } else if (lineCost <= stepCost) {
            directory.add(least, greatest, LINE, lineWidth, (long) lineBase - least, slope);
            encodeLine(counts, from, n, bits);
        } else {
            directory.add(least, greatest, STEP, stepWidth, (long) counts[from] - least, leastStep);
            encodeSteps(counts, from, n, bits);
        }
    }

    private void encodeLevel(int[] counts, int from, int n, int width, RunBits bits) {
        for (int i = 0; i < n; i++) {
            work[i] = counts[from + i];
        }
        bits.put(work, 0, n, least, width);
    }

    private void encodeLine(int[] counts, int from, int n, RunBits bits) {
        for (int i = 0; i < n; i++) {
            work[i] = (long) counts[from + i] - ((i * slope) >> 8);
        }
        bits.put(work, 0, n, lineBase, lineWidth);
    }

    private void encodeSteps(int[] counts, int from, int n, RunBits bits) {
        work[0] = leastStep;
        for (int i = 1; i < n; i++) {
            work[i] = (long) counts[from + i] - counts[from + i - 1];
        }
        bits.put(work, 1, n, leastStep, stepWidth);
    }

    private void measure(int[] counts, int from, int n) {
        least = counts[from];
        greatest = least;
        leastStep = 0;
        long greatestStep = 0;
        double moment = 0;
        double middle = (n - 1) / 2.0;
        for (int i = 0; i < n; i++) {
            int count = counts[from + i];
            least = Math.min(least, count);
            greatest = Math.max(greatest, count);
            moment += (i - middle) * count;
            if (i > 0) {
                long step = (long) count - counts[from + i - 1];
                leastStep = i == 1 ? step : Math.min(leastStep, step);
                greatestStep = i == 1 ? step : Math.max(greatestStep, step);
            }
        }
        stepWidth = bits(greatestStep - leastStep);
        measureLine(counts, from, n, moment);
    }

    /** The least-squares slope; any slope would do, the residuals are exact. */
    private void measureLine(int[] counts, int from, int n, double moment) {
        lineWidth = 64;
        double steep = n < 2 ? 0 : 256 * 12 * moment / ((double) n * ((double) n * n - 1));
        if (Math.abs(steep) >= GREATEST_SLOPE) {
            return;
        }
        slope = (int) Math.round(steep);
        long low = Long.MAX_VALUE;
        long high = Long.MIN_VALUE;
        for (int i = 0; i < n; i++) {
            long residual = (long) counts[from + i] - ((i * slope) >> 8);
            low = Math.min(low, residual);
            high = Math.max(high, residual);
        }
        if (low >= Integer.MIN_VALUE && low <= Integer.MAX_VALUE && bits(high - low) <= 32) {
            lineBase = (int) low;
            lineWidth = bits(high - low);
        }
    }

    private static int bits(long range) {
        return 64 - Long.numberOfLeadingZeros(range);
    }

    /** Bytes that {@code n} numbers of {@code width} bits take; widths that a run cannot have count as endless. */
    static int bytes(int n, int width) {
        return width > 32 ? Integer.MAX_VALUE / 2 : (n * width + 7) >>> 3;
    }

    /**
     * Unpacks {@code n} numbers of {@code width} bits (0 to 32), adds {@code base} to each.
     *
     * <p>Loads eight bytes at a time: {@code in} must go on for seven bytes after the run.
     */
    static void unpack(byte[] in, int at, int n, int width, int base, int[] out, int to) {
        if (width <= 7) {
            unpackNarrow(in, at, n, width, base, out, to);
        } else if (width <= 16) {
            unpackMedium(in, at, n, width, base, out, to);
        } else if (width <= 28) {
            unpackWide(in, at, n, width, base, out, to);
        } else {
            unpackRest(in, at, 0, n, width, base, out, to);
        }
    }

    /** Eight numbers, {@code width} bytes, from one load. */
    private static void unpackNarrow(byte[] in, int at, int n, int width, int base, int[] out, int to) {
        int mask = (1 << width) - 1;
        int two = 2 * width;
        int three = 3 * width;
        int four = 4 * width;
        int p = at;
        int i = 0;
        for (; i + 8 <= n; i += 8, p += width) {
            long x = (long) LONG.get(in, p);
            long y = x >>> four;
            int o = to + i;
            out[o] = base + ((int) x & mask);
            out[o + 1] = base + ((int) (x >>> width) & mask);
            out[o + 2] = base + ((int) (x >>> two) & mask);
            out[o + 3] = base + ((int) (x >>> three) & mask);
            out[o + 4] = base + ((int) y & mask);
            out[o + 5] = base + ((int) (y >>> width) & mask);
            out[o + 6] = base + ((int) (y >>> two) & mask);
            out[o + 7] = base + ((int) (y >>> three) & mask);
        }
        unpackRest(in, at, i, n, width, base, out, to);
    }

    /** Eight numbers from two loads: four times an odd width begins at half a byte, four times 15 and a half byte is 64. */
    private static void unpackMedium(byte[] in, int at, int n, int width, int base, int[] out, int to) {
        int mask = (1 << width) - 1;
        int two = 2 * width;
        int three = 3 * width;
        int half = (4 * width) >>> 3;
        int odd = (4 * width) & 7;
        int p = at;
        int i = 0;
        for (; i + 8 <= n; i += 8, p += width) {
            long x = (long) LONG.get(in, p);
            long y = (long) LONG.get(in, p + half) >>> odd;
            int o = to + i;
            out[o] = base + ((int) x & mask);
            out[o + 1] = base + ((int) (x >>> width) & mask);
            out[o + 2] = base + ((int) (x >>> two) & mask);
            out[o + 3] = base + ((int) (x >>> three) & mask);
            out[o + 4] = base + ((int) y & mask);
            out[o + 5] = base + ((int) (y >>> width) & mask);
            out[o + 6] = base + ((int) (y >>> two) & mask);
            out[o + 7] = base + ((int) (y >>> three) & mask);
        }
        unpackRest(in, at, i, n, width, base, out, to);
    }

    /** Two numbers from each load. */
    private static void unpackWide(byte[] in, int at, int n, int width, int base, int[] out, int to) {
        int mask = (1 << width) - 1;
        int two = 2 * width;
        int bit = 0;
        int i = 0;
        for (; i + 2 <= n; i += 2, bit += two) {
            long x = (long) LONG.get(in, at + (bit >>> 3)) >>> (bit & 7);
            out[to + i] = base + ((int) x & mask);
            out[to + i + 1] = base + ((int) (x >>> width) & mask);
        }
        unpackRest(in, at, i, n, width, base, out, to);
    }

    private static void unpackRest(byte[] in, int at, int from, int n, int width, int base, int[] out, int to) {
        long mask = (1L << width) - 1;
        for (int i = from; i < n; i++) {
            int bit = i * width;
            out[to + i] = base + (int) (((long) LONG.get(in, at + (bit >>> 3)) >>> (bit & 7)) & mask);
        }
    }

    /** Turns residuals of a line into counts, in place. */
    static void addLine(int[] counts, int from, int n, int slope) {
        for (int i = 0; i < n; i++) {
            counts[from + i] += ((int) ByteReader.INT.get(PLACES, 4 * i) * slope) >> 8;
        }
    }

    /**
     * Unpacks {@code n} differences of {@code width} bits (0 to 32), adds {@code least} to each, and sums them up: {@code out[to]}, which is
     * there, and behind it the counts.
     */
    static void unpackSteps(byte[] in, int at, int n, int width, int least, int[] out, int to) {
        int done = width <= FOUR_IN_ONE ? unpackFourSteps(in, at, n, width, least, out, to) : 0;
        unpackRest(in, at, done, n, width, least, out, to + 1);
        sumUp(out, to + done, n - done);
    }

    /** Turns {@code n} differences into counts, in place; {@code counts[from]}, before them, is the first count already. */
    static void sumUp(int[] counts, int from, int n) {
        int sum = counts[from];
        for (int i = from + 1; i <= from + n; i++) {
            sum += counts[i];
            counts[i] = sum;
        }
    }

    /** Four differences from one load, each added up at once; how many were unpacked. */
    private static int unpackFourSteps(byte[] in, int at, int n, int width, int least, int[] out, int to) {
        int mask = (1 << width) - 1;
        int two = 2 * width;
        int three = 3 * width;
        int sum = out[to];
        int bit = 0;
        int i = 0;
        for (; i + 4 <= n; i += 4, bit += 4 * width) {
            long x = (long) LONG.get(in, at + (bit >>> 3)) >>> (bit & 7);
            int o = to + i;
            sum += least + ((int) x & mask);
            out[o + 1] = sum;
            sum += least + ((int) (x >>> width) & mask);
            out[o + 2] = sum;
            sum += least + ((int) (x >>> two) & mask);
            out[o + 3] = sum;
            sum += least + ((int) (x >>> three) & mask);
            out[o + 4] = sum;
        }
        return i;
    }
}
