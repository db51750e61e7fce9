package tautlog.desk.use;

import tautlog.sample.Evidence;
import tautlog.sample.ForwardedEvidence;

/** Leaves out the samples and the shaft before a tick, to a frame; what was in force then is told. */
final class FromTick extends ForwardedEvidence {
    private final long from;

    FromTick(long from, Evidence next) {
        super(next);
        this.from = from;
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int first, int n) {
        if (tick >= from) {
            super.tension(number, tick, flags, counts, first, n);
        }
    }

    @Override
    public void shaft(long tick, long pulses, long[] pulseTicks, int n) {
        if (tick >= from) {
            super.shaft(tick, pulses, pulseTicks, n);
        }
    }
}
