package tautlog.recording;

import java.util.Arrays;

/**
 * The directory of a block of samples: of each run its least and greatest, how it is coded, and the two numbers that its coding needs.
 * Column by column where runs stand in {@link Planes}, else entry by entry. Layout: {@code analyzer/RECORDING.md}, "Runs". Used again for the
 * next block; not thread-safe.
 */
final class RunDirectory {
    private static final int FIRST_CAPACITY = 192;

    private int runs;
    /** Less the least of the run before. */
    private long[] least = new long[FIRST_CAPACITY];
    /** Greatest − least. */
    private long[] range = new long[FIRST_CAPACITY];
    /** Kind in bits 6 and 7, width in those below. */
    private long[] coding = new long[FIRST_CAPACITY];

    private int previousLeast;

    /** How many runs are no level: each has a base and a slope. */
    private int bent;
    /** What the first number is counted from, less the run's least. */
    private long[] base = new long[FIRST_CAPACITY];
    /** Of a line; of steps the least. */
    private long[] slope = new long[FIRST_CAPACITY];

    void clear() {
        runs = 0;
        bent = 0;
        previousLeast = 0;
    }

    /** The next run, a line or steps. */
    void add(int low, int high, int kind, int width, long firstLessLow, long steepness) {
        add(low, high, kind, width);
        base[bent] = firstLessLow;
        slope[bent] = steepness;
        bent++;
    }

    /** The next run, a level. */
    void addLevel(int low, int high, int width) {
        add(low, high, RunCodec.LEVEL, width);
    }

    private void add(int low, int high, int kind, int width) {
        room(runs + 1);
        least[runs] = (long) low - previousLeast;
        range[runs] = (long) high - low;
        coding[runs] = ((long) kind << 6) | width;
        previousLeast = low;
        runs++;
    }

    void writeColumns(ByteWriter out) {
        LongColumn.encode(least, runs, out);
        LongColumn.encode(range, runs, out);
        LongColumn.encode(coding, runs, out);
        LongColumn.encode(base, bent, out);
        LongColumn.encode(slope, bent, out);
    }

    void writeEntries(ByteWriter out) {
        int next = 0;
        for (int run = 0; run < runs; run++) {
            out.zigzag(least[run]);
            out.varint(range[run]);
            out.u8((int) coding[run]);
            if (kind(run) == RunCodec.LINE) {
                out.zigzag(base[next]);
                out.zigzag(slope[next++]);
            } else if (kind(run) == RunCodec.STEP) {
                out.varint(base[next]);
                out.zigzag(slope[next++]);
            }
        }
    }

    /**
     * Reads an entry for each run of {@code into}, which are cut, and finds the bits of each.
     *
     * @throws IndexOutOfBoundsException if the bytes are no such content
     */
    void read(ByteReader in, boolean isInPlanes, SampleBlock into) {
        room(into.runs);
        runs = into.runs;
        if (isInPlanes) {
            readColumns(in);
        } else {
            readEntries(in);
        }
        place(in, isInPlanes, into);
        if (in.left() != 4) {
            throw new IndexOutOfBoundsException(in.left() + " bytes after the last run where 4 belong");
        }
    }

    private void readColumns(ByteReader in) {
        LongColumn.decode(in, least, runs);
        LongColumn.decode(in, range, runs);
        LongColumn.decode(in, coding, runs);
        bent = 0;
        for (int run = 0; run < runs; run++) {
            requireCoding(run);
            bent += bent(run);
        }
        LongColumn.decode(in, base, bent);
        LongColumn.decode(in, slope, bent);
    }

    /** 1 of a line and of steps, 0 of a level: a factor, as which of them comes next cannot be foretold. */
    private int bent(int run) {
        return kind(run) == RunCodec.LEVEL ? 0 : 1;
    }

    private void readEntries(ByteReader in) {
        bent = 0;
        for (int run = 0; run < runs; run++) {
            least[run] = in.zigzag();
            range[run] = in.varint();
            coding[run] = in.u8();
            if (kind(run) == RunCodec.LINE) {
                base[bent] = in.zigzag();
                slope[bent++] = in.zigzag();
            } else if (kind(run) == RunCodec.STEP) {
                base[bent] = in.varint();
                slope[bent++] = in.zigzag();
            }
            requireCoding(run);
        }
    }

    private void requireCoding(int run) {
        if (coding[run] >>> 6 > RunCodec.STEP || width(run) > 32) {
            throw new IndexOutOfBoundsException("a run coded as " + coding[run]);
        }
    }

    private void place(ByteReader in, boolean isInPlanes, SampleBlock into) {
        PlaneBits planes = new PlaneBits(in.array(), in.at(), isInPlanes ? bitsOfFullRuns(into) : 0);
        in.skip(planes.length());
        int bit = 0;
        int low = 0;
        int next = 0;
        for (int run = 0; run < runs; run++) {
            int n = into.runLength(run);
            int coded = (int) coding[run];
            low += (int) least[run];
            int high = low + (int) range[run];
            int first = low + bent(run) * (int) base[next];
            int steep = bent(run) * (int) slope[next];
            next += bent(run);
            if (isInPlanes && n == RunCodec.RUN) {
                into.stored[run] = new PlaneRun(planes, bit, coded, first, steep, low, high);
                bit += width(run);
            } else {
                into.stored[run] = new StoredRun(in.array(), in.at(), n, coded, first, steep, low, high);
                in.skip(RunCodec.bytes(kind(run) == RunCodec.STEP ? n - 1 : n, width(run)));
            }
        }
    }

    private int bitsOfFullRuns(SampleBlock into) {
        int bits = 0;
        for (int run = 0; run < runs; run++) {
            bits += into.runLength(run) == RunCodec.RUN ? width(run) : 0;
        }
        return bits;
    }

    private int kind(int run) {
        return (int) coding[run] >>> 6;
    }

    private int width(int run) {
        return (int) coding[run] & 0x3F;
    }

    private void room(int wanted) {
        if (wanted > least.length) {
            int more = Math.max(wanted, 2 * least.length);
            least = Arrays.copyOf(least, more);
            range = Arrays.copyOf(range, more);
            coding = Arrays.copyOf(coding, more);
            base = Arrays.copyOf(base, more);
            slope = Arrays.copyOf(slope, more);
        }
    }
}
