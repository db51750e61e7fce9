package tautlog.recording;

import tautlog.sample.StoredCounts;

/** What the directory of a block of samples says of its runs, being read. Reused from block to block. */
final class RunDirectory {
    private int[] least = new int[192];
    private int[] greatest = new int[192];
    private int[] coding = new int[192];
    private int[] base = new int[192];
    private int[] slope = new int[192];

    /**
     * Reads an entry for each run of {@code into}, which are cut, and finds the bits of each.
     *
     * @throws IndexOutOfBoundsException if the bytes are no such content
     */
    void read(ByteReader in, boolean isInPlanes, SampleBlock into) {
        readEntries(in, into.runs);
        if (isInPlanes) {
            placeInPlanes(in, into);
        } else {
            place(in, into);
        }
        if (in.left() != 4) {
            throw new IndexOutOfBoundsException(in.left() + " bytes after the last run where 4 belong");
        }
    }

    private void readEntries(ByteReader in, int runs) {
        room(runs);
        int low = 0;
        for (int run = 0; run < runs; run++) {
            low += (int) in.zigzag();
            least[run] = low;
            greatest[run] = low + (int) in.varint();
            int coded = in.u8();
            coding[run] = coded;
            base[run] = low;
            slope[run] = 0;
            if (coded >>> 6 == RunCodec.LINE) {
                base[run] = low + (int) in.zigzag();
                slope[run] = (int) in.zigzag();
            } else if (coded >>> 6 == RunCodec.STEP) {
                base[run] = low + (int) in.varint();
                slope[run] = (int) in.zigzag();
            }
            if (coded >>> 6 == 3 || width(run) > 32) {
                throw new IndexOutOfBoundsException("a run coded as " + coded);
            }
        }
    }

    private void place(ByteReader in, SampleBlock into) {
        for (int run = 0; run < into.runs; run++) {
            into.stored[run] = next(in, run, into.runLength(run));
        }
    }

    /** The run whose bits come next. */
    private StoredCounts next(ByteReader in, int run, int n) {
        int at = in.at();
        in.skip(RunCodec.bytes(coding[run] >>> 6 == RunCodec.STEP ? n - 1 : n, width(run)));
        return new StoredRun(in.array(), at, n, coding[run], base[run], slope[run], least[run], greatest[run]);
    }

    private void placeInPlanes(ByteReader in, SampleBlock into) {
        int bits = 0;
        for (int run = 0; run < into.runs; run++) {
            bits += into.runLength(run) == RunCodec.RUN ? width(run) : 0;
        }
        PlaneBits planes = new PlaneBits(in.array(), in.at(), bits);
        in.skip(PlaneBits.bytes(bits));
        int bit = 0;
        for (int run = 0; run < into.runs; run++) {
            if (into.runLength(run) == RunCodec.RUN) {
                into.stored[run] =
                        new PlaneRun(planes, bit, coding[run], base[run], slope[run], least[run], greatest[run]);
                bit += width(run);
            } else {
                into.stored[run] = next(in, run, into.runLength(run));
            }
        }
    }

    private int width(int run) {
        return coding[run] & 0x3F;
    }

    private void room(int runs) {
        if (runs > least.length) {
            least = new int[runs];
            greatest = new int[runs];
            coding = new int[runs];
            base = new int[runs];
            slope = new int[runs];
        }
    }
}
