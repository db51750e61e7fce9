package tautlog.desk.analysis;

import tautlog.sample.Instrument;
import tautlog.sample.QuietEvidence;
import tautlog.sample.Tally;

/** Counts what is missing or in doubt in one outing. Source: {@code analyzer/FINDINGS.md}, Gap. */
public final class TrustCount extends QuietEvidence {
    private final Instrument instrument;
    private long nextNumber = Long.MIN_VALUE;
    private long samples;
    private long gaps;
    private long missing;
    private long endStopSamples;
    private long lostByInstrument;
    private Tally tally = Tally.NONE;

    TrustCount(Instrument instrument) {
        this.instrument = instrument;
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        if (nextNumber != Long.MIN_VALUE && number > nextNumber) {
            gaps++;
            missing += number - nextNumber;
        }
        nextNumber = number + n;
        samples += n;
        if ((flags & FLAG_OPEN_BRIDGE) == 0) {
            for (int i = from; i < from + n; i++) {
                endStopSamples += instrument.isAtEndStop(counts[i]) ? 1 : 0;
            }
        }
    }

    @Override
    public void health(long tick, int supplyMillivolts, int temperatureDecidegrees, long lost) {
        lostByInstrument = Math.max(lostByInstrument, lost);
    }

    @Override
    public void tally(Tally soFar) {
        tally = soFar;
    }

    /** Samples that were read. */
    public long samples() {
        return samples;
    }

    /** Jumps in the sample numbers. */
    public long gaps() {
        return gaps;
    }

    /** Samples that the jumps left out. */
    public long missingSamples() {
        return missing;
    }

    /** Samples at the converter's end stop, those of frames with an open bridge left out. */
    public long endStopSamples() {
        return endStopSamples;
    }

    /** Since the instrument's boot, as it said last. */
    public long lostByInstrument() {
        return lostByInstrument;
    }

    public Tally tally() {
        return tally;
    }
}
