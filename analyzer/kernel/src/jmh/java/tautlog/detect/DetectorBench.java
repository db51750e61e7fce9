package tautlog.detect;

import java.math.BigDecimal;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import tautlog.fixtures.Traces;
import tautlog.recording.CodedTrace;
import tautlog.sample.Calibration;
import tautlog.sample.StoredCounts;

/**
 * Each stage and each detector alone, on one core, from coded blocks in memory: million samples a second.
 *
 * <p>The trace is {@link Traces#afternoon}: 500 Hz, noise of ±8 counts, pulls 40 % of the time. Every figure holds the reading of the
 * blocks (checksum, frames, directories), which {@link #read} is alone, and the decoding of those runs of which the detector wants to see
 * single samples; so the time of a detector is what its own figure takes longer than {@link #hand}. They do not add up to the chain, in
 * which a run is decoded once for all of them.
 */
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(value = 1, jvmArgsAppend = "-XX:-BackgroundCompilation")
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 6, time = 1)
public class DetectorBench {
    private static final int SAMPLES = 4_000_000;

    /** Jolts are not among them: alone they learn of no shock that hides some. */
    private static final Map<String, DetectorFeed.Maker> ALONE = Map.of(
            "pull", DetectorFeed::pulls,
            "overload", DetectorFeed::overloads,
            "shock", DetectorFeed::shocks,
            "drop", DetectorFeed::drops);

    /** The samples, plain and coded. */
    @State(Scope.Benchmark)
    public static class Trace {
        private int[] counts = new int[0];
        private CodedTrace coded = CodedTrace.of(counts);

        @Setup
        public void make() {
            counts = Traces.afternoon(1, SAMPLES);
            coded = CodedTrace.of(counts);
            requireSameFound();
        }

        /** Alone each detector finds what it finds among the others; what is open at the end of the trace aside. */
        private void requireSameFound() {
            ChainFeed chain = new ChainFeed(ChainFeed.Shaft.SILENT);
            read(chain);
            ALONE.forEach((kind, maker) -> {
                DetectorFeed feed = new DetectorFeed(maker);
                read(feed);
                int alone = feed.sink.found(kind);
                if (alone == 0 || Math.abs(alone - chain.sink.found(kind)) > 1) {
                    throw new IllegalStateException(kind + " alone finds something else");
                }
            });
        }

        private long read(CodedTrace.Reader reader) {
            coded.read(0, coded.blocks(), reader);
            return SAMPLES;
        }

        private long through(DetectorFeed feed) {
            return read(feed) + feed.told();
        }
    }

    /** Checksum, frames and directories; no counts. */
    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public long read(Trace trace) {
        LeastAndGreatest reader = new LeastAndGreatest();
        return trace.read(reader) + reader.sum;
    }

    /** The same, and all counts. */
    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public long decode(Trace trace) {
        Decoding reader = new Decoding();
        return trace.read(reader) + reader.counts[0];
    }

    /** Each count to newtons by a straight line, from plain counts. */
    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public double calibrateStraight(Trace trace) {
        return newtons(trace.counts, Calibration.of("0", "0.5"));
    }

    /** Each count to newtons by a curve, from plain counts. */
    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public double calibrateCurved(Trace trace) {
        return newtons(
                trace.counts, new Calibration(BigDecimal.ZERO, new BigDecimal("0.5"), new BigDecimal("0.0000001")));
    }

    private static double newtons(int[] counts, Calibration calibration) {
        double sum = 0;
        for (int count : counts) {
            sum += calibration.newtons(count);
        }
        return sum;
    }

    /** Runs handed on as the detectors get them, to none. */
    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public long hand(Trace trace) {
        return trace.through(new DetectorFeed(feed -> run -> {}));
    }

    /** With the rainflow count inside each pull. */
    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public long pulls(Trace trace) {
        return trace.through(new DetectorFeed(DetectorFeed::pulls));
    }

    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public long overloads(Trace trace) {
        return trace.through(new DetectorFeed(DetectorFeed::overloads));
    }

    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public long jolts(Trace trace) {
        return trace.through(
                new DetectorFeed(feed -> new JoltDetector(feed.thresholds, feed.limits, feed.ring, feed.sink)::run));
    }

    /** Jolts learn of each snap, but look at no sample. */
    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public long shocks(Trace trace) {
        return trace.through(new DetectorFeed(DetectorFeed::shocks));
    }

    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public long drops(Trace trace) {
        return trace.through(new DetectorFeed(DetectorFeed::drops));
    }

    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public long endStops(Trace trace) {
        return trace.through(
                new DetectorFeed(feed -> new EndStopDetector(DetectorFeed.INSTRUMENT.fullScale(), feed.sink)::run));
    }

    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public long spikes(Trace trace) {
        return trace.through(new DetectorFeed(feed -> new SpikeDetector(feed.thresholds, feed.ring, feed.sink)::run));
    }

    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public long zeros(Trace trace) {
        return trace.through(new DetectorFeed(feed -> new ZeroDetector(feed.thresholds, feed.ring, feed.sink)::run));
    }

    /** Runs are cut where a second ends, too. */
    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public long seconds(Trace trace) {
        return trace.through(new DetectorFeed(DetectorFeed::seconds));
    }

    /** The rainflow count that the pulls use, with its gate, over the whole trace as one pull. */
    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public long rainflow(Trace trace) {
        return trace.through(new DetectorFeed(DetectorFeed::rainflow));
    }

    /** A shaft of 54 pulses a second told every 100 ms: speed, join with the samples, stalls; and the pulls that they belong to. */
    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public long shaftAndPulls(Trace trace) {
        ShaftFeed feed = new ShaftFeed();
        return trace.read(feed) + feed.told();
    }

    /** All of it, without the shaft. */
    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public long chainWithoutShaft(Trace trace) {
        ChainFeed feed = new ChainFeed(ChainFeed.Shaft.SILENT);
        return trace.read(feed) + feed.told();
    }

    /** All of it. */
    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public long chain(Trace trace) {
        ChainFeed feed = new ChainFeed(ChainFeed.Shaft.TURNING);
        return trace.read(feed) + feed.told();
    }

    private static final class LeastAndGreatest implements CodedTrace.Reader {
        private long sum;

        @Override
        public void frame(long number, long tick, int flags, int n) {
            sum += tick;
        }

        @Override
        public void run(long number, StoredCounts counts) {
            sum += counts.greatest() - counts.least();
        }
    }

    private static final class Decoding implements CodedTrace.Reader {
        private final int[] counts = new int[StoredCounts.MOST];

        @Override
        public void frame(long number, long tick, int flags, int n) {}

        @Override
        public void run(long number, StoredCounts stored) {
            stored.copyTo(counts, 0);
        }
    }
}
