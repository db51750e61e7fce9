package tautlog.detect;

import tautlog.recording.CodedTrace;
import tautlog.sample.StoredCounts;

/** Gives runs to the pulls, and the shaft's frames to the join and the stalls, as {@link Detection} does. */
final class ShaftFeed implements CodedTrace.Reader {
    private final BenchSink sink = new BenchSink(false);
    private final Thresholds thresholds =
            new Thresholds(DetectorFeed.INSTRUMENT, DetectorFeed.RIG, DetectorFeed.CALIBRATION);
    private final HookupLimits limits = new LimitsByHookup(DetectorFeed.RIG, DetectorFeed.CALIBRATION).inForce();
    private final CountRing ring = new CountRing(1 << 14);
    private final Run run = new Run(ring, limits);
    private final Frames frames = new Frames(DetectorFeed.INSTRUMENT);
    private final PullDetector pulls = new PullDetector(thresholds, limits, sink);
    private final StallDetector stalls = new StallDetector(DetectorFeed.INSTRUMENT, thresholds, ring, pulls, sink);
    private final ShaftSpeed speed = new ShaftSpeed(DetectorFeed.INSTRUMENT);
    private final ShaftJoin join = new ShaftJoin(
            DetectorFeed.INSTRUMENT,
            thresholds,
            DetectorFeed.RIG,
            frames,
            ring,
            pulls,
            stalls,
            new SecondsMaker(DetectorFeed.INSTRUMENT, sink),
            new InputLog(),
            sink);
    private final BenchShaft shaft = new BenchShaft();
    private boolean began;

    @Override
    public void frame(long number, long tick, int flags, int n) {
        shaft.tellBefore(number, this::shaft);
        if (!began) {
            began = true;
            ring.beginStretch(number);
        }
        frames.present(number, tick, n, ring.placeOf(number));
        join.samplesAt(tick);
    }

    private void shaft(long tick, long pulses, long[] pulseTicks, int n) {
        double rpm = speed.frame(tick, pulses, pulseTicks, n);
        if (!Double.isNaN(rpm)) {
            sink.shaftReading(tick, rpm);
        }
        if (join.isInTime(tick)) {
            join.frame(tick, rpm);
        }
    }

    @Override
    public void run(long number, StoredCounts counts) {
        int n = counts.size();
        for (int k = 0; k < n; ) {
            int fitting = ring.cut(n - k);
            run.begin(number + k, limits);
            StoredCounts part = counts.part(k, fitting);
            ring.append(part);
            run.add(part);
            pulls.run(run);
            k += fitting;
        }
        pulls.frameTaken(number, frames);
        join.settle(number + n - 1);
        stalls.settle(join.knownThrough());
        pulls.report(Long.MAX_VALUE, join.knownThrough());
        frames.forgetBefore(join.settledTick(), number);
    }

    long told() {
        return sink.told;
    }
}
