package tautlog.bench;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import tautlog.detect.Detection;
import tautlog.detect.Finding;
import tautlog.detect.FindingSink;
import tautlog.detect.Second;
import tautlog.fixtures.Rigs;
import tautlog.fixtures.Traces;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;

/**
 * The whole detector chain on one core: all detectors, seconds, rainflow, and the shaft; beside it, in the same run, the plain search
 * for the greatest count, which is the least that anybody could do with the samples.
 *
 * <p>The trace is {@link Traces#afternoon}: 500 Hz, noise of ±8 counts, pulls 40 % of the time. The shaft turns throughout at 540 rpm
 * with 6 pulses a revolution, and tells of it every 100 ms, that is every 50 samples.
 */
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 6, time = 1)
@Measurement(iterations = 12, time = 1)
public class DetectBench {
    private static final int SAMPLES = 4_000_000;
    private static final long TICKS_PER_SAMPLE = 2_000;
    private static final int TICKS_PER_SHAFT_FRAME = 100_000;
    private static final int PULSES_PER_REVOLUTION = 6;
    private static final long TICKS_PER_PULSE = 18_518;

    /** The samples. */
    @State(Scope.Benchmark)
    public static class Trace {
        private int[] counts = new int[0];

        @Setup
        public void make() {
            counts = Traces.afternoon(1, SAMPLES);
        }
    }

    /** Samples a frame: what the wire carries, and what a sealed block could hand on. */
    @State(Scope.Benchmark)
    public static class Framing {
        @Param({"25", "50", "78", "4096"})
        public int frame;
    }

    /** In samples a microsecond, that is million samples a second. */
    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public long chain(Trace trace, Framing framing) {
        Sum sum = new Sum();
        Instrument instrument = new Instrument("BENCH", 1, 0, 1, 1_000_000, 500_000, 8_388_607, PULSES_PER_REVOLUTION);
        Detection detection =
                new Detection(instrument, Rigs.withLimit("20000", "8000"), Calibration.of("0", "0.5"), sum);
        Shaft shaft = new Shaft();
        for (int at = 0; at < SAMPLES; at += framing.frame) {
            int n = Math.min(framing.frame, SAMPLES - at);
            detection.tension(at, at * TICKS_PER_SAMPLE, 0, trace.counts, at, n);
            shaft.tellBefore((at + n) * TICKS_PER_SAMPLE, detection);
        }
        detection.end();
        return sum.value;
    }

    /** The greatest count, by a plain loop; in samples a microsecond as well. */
    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public int scan(Trace trace) {
        int greatest = Integer.MIN_VALUE;
        for (int count : trace.counts) {
            greatest = Math.max(greatest, count);
        }
        return greatest;
    }

    private static final class Shaft {
        private final long[] ticks = new long[8];
        private long nextFrame = TICKS_PER_SHAFT_FRAME;
        private long nextPulse = TICKS_PER_PULSE;
        private long pulses;

        void tellBefore(long tick, Detection detection) {
            for (; nextFrame < tick; nextFrame += TICKS_PER_SHAFT_FRAME) {
                int n = 0;
                for (; nextPulse <= nextFrame; nextPulse += TICKS_PER_PULSE) {
                    ticks[n++] = nextPulse;
                }
                pulses += n;
                detection.shaft(nextFrame, pulses, ticks, n);
            }
        }
    }

    private static final class Sum implements FindingSink {
        private long value;

        @Override
        public void finding(Finding finding) {
            value += finding.startNumber();
        }

        @Override
        public void second(Second second) {
            value += second.countSum();
        }

        @Override
        public void cycle(long rangeCounts, long twiceMeanCounts, int halves) {
            value += rangeCounts;
        }

        @Override
        public void shaftReading(long tick, double rpm) {
            value += tick;
        }
    }
}
