package tautlog.recording;

import tautlog.sample.StoredCounts;

/** A full run as it lies in the planes of its block. */
final class PlaneRun implements StoredCounts {
    private final PlaneBits planes;
    private final int bit;
    private final int coding;
    private final int base;
    private final int slope;
    private final int least;
    private final int greatest;

    /**
     * @param bit where its bits begin in each lane
     * @param coding as in the directory
     * @param base as {@code slope}, by the kind of the coding
     */
    PlaneRun(PlaneBits planes, int bit, int coding, int base, int slope, int least, int greatest) {
        this.planes = planes;
        this.bit = bit;
        this.coding = coding;
        this.base = base;
        this.slope = slope;
        this.least = least;
        this.greatest = greatest;
    }

    @Override
    public int size() {
        return RunCodec.RUN;
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
        int kind = coding >>> 6;
        int width = coding & 0x3F;
        if (kind == RunCodec.STEP) {
            planes.unpack(bit, width, slope, to, into);
            to[into] = base;
            RunCodec.sumUp(to, into, RunCodec.RUN - 1);
        } else {
            planes.unpack(bit, width, base, to, into);
            if (kind == RunCodec.LINE) {
                RunCodec.addLine(to, into, RunCodec.RUN, slope);
            }
        }
    }
}
