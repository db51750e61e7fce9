package tautlog.desk.use;

import tautlog.detect.Detection;
import tautlog.recording.RunSink;
import tautlog.recording.SampleBlock;
import tautlog.sample.CountBounds;
import tautlog.sample.Evidence;
import tautlog.sample.ForwardedEvidence;
import tautlog.sample.ZeroShift;
import tautlog.usage.ShareMeter;

/**
 * Feeds an outing run by run to detectors and meters.
 *
 * <pre>
 *   Replay ──▶ UseRuns ── samples, less a moved zero ──▶ Detection, ShareMeter
 *                 ├── frames ──▶ PresentSamples, Detection        shaft ──▶ Detection
 *                 └── all else ──▶ next: HookupChoice ──▶ ZeroShift ──▶ Detection, ShareMeter
 * </pre>
 */
final class UseRuns extends ForwardedEvidence implements RunSink {
    private final Detection detection;
    private final PresentSamples present;
    private final ShareMeter shares;
    private final ZeroShift zero;
    private final CountBounds bounds = new CountBounds();

    /**
     * @param zero is told of moved zeros by {@code next}
     * @param next takes everything but samples and shaft, for {@code detection}, {@code shares} and {@code zero}
     */
    UseRuns(Detection detection, PresentSamples present, ShareMeter shares, ZeroShift zero, Evidence next) {
        super(next);
        this.detection = detection;
        this.present = present;
        this.shares = shares;
        this.zero = zero;
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        RunSink.super.tension(number, tick, flags, counts, from, n);
    }

    @Override
    public void frame(long number, long tick, int flags, int n) {
        present.frame(number, tick, flags, n);
        detection.frame(number, tick, flags, n);
    }

    @Override
    public void shaft(long tick, long pulses, long[] pulseTicks, int n) {
        detection.shaft(tick, pulses, pulseTicks, n);
    }

    @Override
    public void run(SampleBlock block, int run, int skip, int n) {
        long number = block.runNumber(run) + skip;
        if ((block.runFlags(run) & FLAG_OPEN_BRIDGE) != 0) {
            zero.advanceTo(number + n - 1);
            return;
        }
        int[] counts = block.counts(run);
        int from = block.runFrom(run) + skip;
        zero.advanceTo(number);
        if (zero.shiftsBefore(number + n)) {
            measured(number, zero.shifted(number, counts, from, n), 0, n);
        } else if (n < block.runLength(run)) {
            measured(number, counts, from, n);
        } else {
            take(number, counts, from, n, block.runLeast(run), block.runGreatest(run));
        }
    }

    private void measured(long number, int[] counts, int from, int n) {
        bounds.measure(counts, from, n);
        take(number, counts, from, n, bounds.least(), bounds.greatest());
    }

    private void take(long number, int[] counts, int from, int n, int least, int greatest) {
        detection.run(number, counts, from, n, least, greatest);
        if (!shares.takeWhole(number, n, least, greatest)) {
            shares.take(number, counts, from, n);
        }
    }
}
