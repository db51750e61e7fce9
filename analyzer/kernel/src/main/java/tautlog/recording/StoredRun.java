package tautlog.recording;

import tautlog.sample.StoredCounts;

/** A run of a recording as it lies in its block: what the directory says of it, and where its bits are. */
final class StoredRun implements StoredCounts {
    private final byte[] bytes;
    private final int at;
    private final int n;
    private final int kind;
    private final int width;
    private final int base;
    private final int slope;
    private final int least;
    private final int greatest;

    /**
     * @param bytes which go on for seven bytes behind the run
     * @param at where its bits begin
     * @param n how many counts
     * @param coding as in the directory
     * @param base as {@code slope}, by the kind of the coding
     */
    StoredRun(byte[] bytes, int at, int n, int coding, int base, int slope, int least, int greatest) {
        this.bytes = bytes;
        this.at = at;
        this.n = n;
        this.kind = coding >>> 6;
        this.width = coding & 0x3F;
        this.base = base;
        this.slope = slope;
        this.least = least;
        this.greatest = greatest;
    }

    @Override
    public int size() {
        return n;
    }

    @Override
    public int least() {
        return least;
    }

    @Override
    public int greatest() {
        return greatest;
    }

    @Override
    public void copyTo(int[] to, int into) {
        if (kind == RunCodec.STEP) {
            to[into] = base;
            RunCodec.unpackSteps(bytes, at, n - 1, width, slope, to, into);
        } else {
            RunCodec.unpack(bytes, at, n, width, base, to, into);
            if (kind == RunCodec.LINE) {
                RunCodec.addLine(to, into, n, slope);
            }
        }
    }
}
