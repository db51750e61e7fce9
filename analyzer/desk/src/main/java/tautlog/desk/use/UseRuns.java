package tautlog.desk.use;

import java.util.Optional;
import tautlog.detect.Detection;
import tautlog.recording.RunSink;
import tautlog.sample.Evidence;
import tautlog.sample.ForwardedEvidence;
import tautlog.sample.Passage;
import tautlog.sample.PlainCounts;
import tautlog.sample.StoredCounts;
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
    private final int[] open = new int[StoredCounts.MOST];

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
    public void run(long number, int flags, StoredCounts counts) {
        int n = counts.size();
        if ((flags & FLAG_OPEN_BRIDGE) != 0) {
            zero.advanceTo(number + n - 1);
            return;
        }
        zero.advanceTo(number);
        if (zero.movesBefore(number + n)) {
            counts.copyTo(open, 0);
            take(number, PlainCounts.copyOf(zero.shifted(number, open, 0, n), 0, n));
        } else {
            take(number, zero.shifted(counts));
        }
    }

    @Override
    public boolean passage(Passage passage) {
        long first = passage.first();
        int n = passage.samples();
        zero.advanceTo(first);
        if (zero.movesBefore(first + n)) {
            return false;
        }
        Optional<Passage> left = zero.shifted(passage);
        if (left.isEmpty() || !detection.passage(left.get())) {
            return false;
        }
        present.frames(passage);
        if (!shares.takeWhole(first, n, left.get().least(), left.get().greatest())) {
            share(left.get());
        }
        return true;
    }

    private void share(Passage passage) {
        long number = passage.first();
        int back = passage.samples();
        for (int i = 0; i < passage.runs(); i++) {
            StoredCounts counts = passage.run(i);
            share(number, counts, back);
            number += counts.size();
            back -= counts.size();
        }
    }

    private void take(long number, StoredCounts counts) {
        detection.run(number, counts);
        share(number, counts, counts.size());
    }

    /** @param back where they lie in the detectors */
    private void share(long number, StoredCounts counts, int back) {
        int n = counts.size();
        if (!shares.takeWhole(number, n, counts.least(), counts.greatest())) {
            detection.copyBack(back, n, open);
            shares.take(number, open, 0, n);
        }
    }
}
