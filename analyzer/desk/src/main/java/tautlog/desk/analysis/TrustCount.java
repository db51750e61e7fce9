package tautlog.desk.analysis;

import tautlog.detect.SlackProof;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;
import tautlog.sample.QuietEvidence;
import tautlog.sample.Tally;
import tautlog.sample.ZeroSource;

/** Counts what is missing or in doubt in one outing. Source: {@code analyzer/FINDINGS.md}, Gap and Zero. */
public final class TrustCount extends QuietEvidence {
    private final Instrument instrument;
    private long nextNumber = Long.MIN_VALUE;
    private long samples;
    private long gaps;
    private long missing;
    private long endStopSamples;
    private long lostByInstrument;
    private Tally tally = Tally.NONE;
    private final Calibration calibration;
    private final SlackProof slack;
    private long zeroMoves;
    private double greatestZeroNewtons;

    /** Is fed counts of which a moved zero was taken off, and the moves. */
    TrustCount(Instrument instrument, Rig rig, Calibration calibration) {
        this.instrument = instrument;
        this.calibration = calibration;
        slack = new SlackProof(instrument, rig, calibration);
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        if (nextNumber != Long.MIN_VALUE && number > nextNumber) {
            gaps++;
            missing += number - nextNumber;
        }
        nextNumber = number + n;
        slack.tension(number, tick, flags, counts, from, n);
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
    public void zero(long atNumber, int shiftCounts, ZeroSource by) {
        zeroMoves++;
        double newtons = calibration.newtons(calibration.zeroCounts().doubleValue() + shiftCounts);
        greatestZeroNewtons = Math.max(greatestZeroNewtons, Math.abs(newtons));
        slack.zero(atNumber, shiftCounts, by);
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

    /** How often the zero was set. */
    public long zeroMoves() {
        return zeroMoves;
    }

    /** The greatest distance of a zero in force from the calibration's own, 0 or above. */
    public double greatestZeroNewtons() {
        return greatestZeroNewtons;
    }

    /** Whether slack was proven in the outing, or a person gave their word for it. */
    public boolean isZeroProven() {
        return slack.isProven();
    }

    public Tally tally() {
        return tally;
    }
}
