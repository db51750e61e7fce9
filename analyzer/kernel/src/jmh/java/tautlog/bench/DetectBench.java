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
 * The whole detector chain on one core: all detectors, seconds, rainflow, with a shaft that turns throughout.
 *
 * <p>The trace is {@link Traces#afternoon}: 500 Hz, noise of ±8 counts, pulls 40 % of the time.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class DetectBench {
    private static final int SAMPLES = 4_000_000;
    private static final long TICKS_PER_SAMPLE = 2_000;
    private static final int TICKS_PER_SHAFT_FRAME = 100_000;

    /** Samples a frame: what the wire carries, and what a sealed block could hand on. */
    @Param({"50", "78", "4096"})
    public int frame;

    private final Instrument instrument = new Instrument("BENCH", 1, 0, 1, 1_000_000, 500_000, 8_388_607, 1);
    private final long[] pulseTicks = new long[1];
    private int[] trace = new int[0];

    @Setup
    public void makeTrace() {
        trace = Traces.afternoon(1, SAMPLES);
    }

    /** In samples a microsecond, that is million samples a second. */
    @Benchmark
    @OperationsPerInvocation(SAMPLES)
    public long chain() {
        Sum sum = new Sum();
        Detection detection =
                new Detection(instrument, Rigs.withLimit("20000", "8000"), Calibration.of("0", "0.5"), sum);
        long nextShaft = TICKS_PER_SHAFT_FRAME;
        long pulses = 0;
        for (int at = 0; at < SAMPLES; at += frame) {
            int n = Math.min(frame, SAMPLES - at);
            detection.tension(at, at * TICKS_PER_SAMPLE, 0, trace, at, n);
            for (; nextShaft < (at + n) * TICKS_PER_SAMPLE; nextShaft += TICKS_PER_SHAFT_FRAME) {
                pulseTicks[0] = nextShaft;
                detection.shaft(nextShaft, ++pulses, pulseTicks, 1);
            }
        }
        detection.end();
        return sum.value;
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
