package tautlog.detect;

import tautlog.fixtures.Rigs;
import tautlog.recording.CodedTrace;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;
import tautlog.sample.Passage;
import tautlog.sample.StoredCounts;

/** Gives runs to one detector as {@link Detection} gives them to all. */
final class DetectorFeed implements CodedTrace.Reader {
    static final Instrument INSTRUMENT = new Instrument("BENCH", 1, 0, 1, 1_000_000, 500_000, 8_388_607, 6);
    static final Rig RIG = Rigs.withLimit("20000", "8000");
    static final Calibration CALIBRATION = Calibration.of("0", "0.5");
    private static final int RING = 1 << 14;

    final Thresholds thresholds;
    final HookupLimits limits;
    final CountRing ring = new CountRing(RING);
    final BenchSink sink = new BenchSink(true);
    private final Run run;
    private final OneDetector detector;
    private Cut cut = (number, n) -> n;
    private long tick;
    private boolean began;

    /** What is measured. */
    interface OneDetector {
        void run(Run run);

        /** Whether it may be given a long run of slack line. */
        default boolean isAtRest() {
            return false;
        }

        /** The trace is over. */
        default void end() {}
    }

    /** Makes it. */
    interface Maker {
        OneDetector of(DetectorFeed feed);
    }

    /** How many of {@code n} samples from {@code number} on go together. */
    private interface Cut {
        int of(long number, int n);
    }

    DetectorFeed(Maker maker) {
        this(RIG, maker);
    }

    DetectorFeed(Rig rig, Maker maker) {
        thresholds = new Thresholds(INSTRUMENT, rig, CALIBRATION);
        limits = new LimitsByHookup(rig, CALIBRATION).inForce();
        run = new Run(ring, limits);
        detector = maker.of(this);
    }

    /** Pulls that get no samples: who finds something in one may tell them. */
    PullDetector idlePulls() {
        return new PullDetector(thresholds, limits, sink);
    }

    OneDetector pulls() {
        PullDetector pulls = idlePulls();
        return samples -> {
            pulls.run(samples);
            pulls.report(Long.MAX_VALUE, Long.MAX_VALUE);
        };
    }

    /** Pulls with rainflow, overloads and shocks together, as in the chain. */
    OneDetector pullsOverloadsAndShocks() {
        PullDetector pulls = idlePulls();
        OverloadDetector overloads = new OverloadDetector(thresholds, limits, pulls, sink);
        JoltDetector jolts = new JoltDetector(thresholds, limits, ring, sink);
        ShockDetector shocks = new ShockDetector(thresholds, limits, pulls, jolts, sink);
        return new OneDetector() {
            @Override
            public void run(Run samples) {
                pulls.run(samples);
                overloads.run(samples);
                shocks.run(samples);
                pulls.report(shocks.shocksKnownBelow(), Long.MAX_VALUE);
            }

            @Override
            public boolean isAtRest() {
                return !pulls.areOpen() && !pulls.areWaiting() && !shocks.isUndecided();
            }

            @Override
            public void end() {
                pulls.end();
                overloads.end();
                shocks.end();
                pulls.report(Long.MAX_VALUE, Long.MAX_VALUE);
            }
        };
    }

    OneDetector overloads() {
        return new OverloadDetector(thresholds, limits, idlePulls(), sink)::run;
    }

    OneDetector spikes() {
        return new SpikeDetector(thresholds, ring, sink)::run;
    }

    OneDetector shocks() {
        JoltDetector jolts = new JoltDetector(thresholds, limits, ring, sink);
        return new ShockDetector(thresholds, limits, idlePulls(), jolts, sink)::run;
    }

    OneDetector drops() {
        Frames frames = new Frames(INSTRUMENT);
        DropDetector drops = new DropDetector(INSTRUMENT, thresholds, ring, new InputLog(), sink);
        return samples -> {
            frames.present(
                    samples.first, samples.first * CodedTrace.TICKS_PER_SAMPLE, samples.n, ring.size() - samples.n);
            drops.run(samples);
            drops.frameTaken(samples.first, tick, frames);
            drops.report(Long.MAX_VALUE);
            frames.forgetBefore(tick, samples.first - thresholds.dropWithin);
        };
    }

    OneDetector seconds() {
        SecondsMaker seconds = new SecondsMaker(INSTRUMENT, sink);
        cut = seconds::cut;
        return samples -> {
            seconds.run(samples);
            seconds.report(Long.MAX_VALUE);
        };
    }

    OneDetector rainflow() {
        PullCycles cycles = new PullCycles(thresholds.relations, sink);
        cycles.begin();
        cycles.confirm();
        return samples -> {
            cycles.run(samples);
            cycles.keep();
        };
    }

    void end() {
        detector.end();
    }

    long told() {
        return sink.told;
    }

    @Override
    public void frame(long number, long atTick, int flags, int n) {
        tick = atTick;
        if (!began) {
            began = true;
            ring.beginStretch(number);
        }
    }

    @Override
    public void run(long number, StoredCounts counts) {
        int n = counts.size();
        for (int k = 0; k < n; ) {
            int fitting = ring.cut(cut.of(number + k, n - k));
            run.begin(number + k, limits);
            join(counts.part(k, fitting));
            detector.run(run);
            k += fitting;
        }
    }

    private void join(StoredCounts counts) {
        ring.append(counts);
        run.add(counts);
    }

    /** As one run where the line is slack and the detectors are at rest, as {@link Detection#passage} does it. */
    @Override
    public boolean passage(Passage passage) {
        int n = passage.samples();
        if (!began || !detector.isAtRest() || passage.greatest() >= thresholds.slackBelow || ring.cut(n) < n) {
            return false;
        }
        run.begin(passage.first(), limits);
        for (int i = 0; i < passage.runs(); i++) {
            join(passage.run(i));
        }
        detector.run(run);
        return true;
    }
}
