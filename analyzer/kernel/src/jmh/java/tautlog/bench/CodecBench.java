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
import tautlog.detect.Finding;
import tautlog.detect.FindingSink;
import tautlog.detect.Second;
import tautlog.recording.BenchBlocks;

/** Samples a microsecond, which is million samples a second, on one core. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 6, time = 1)
@Measurement(iterations = 12, time = 1)
@Fork(1)
public class CodecBench {
    /** Uniform noise in counts; 1 N a count at 8, 0.01 N a count at 2,000. */
    @Param({"8", "2000"})
    public int noise;

    private BenchBlocks blocks;

    @Setup
    public void setUp() {
        blocks = new BenchBlocks(noise, noise == 8 ? 1 : 100);
    }

    /** Checksum, frames, directory and all counts. */
    @Benchmark
    @OperationsPerInvocation(BenchBlocks.SAMPLES)
    public int decode() {
        return blocks.decode();
    }

    /** Checksum, frames and directory; no counts. */
    @Benchmark
    @OperationsPerInvocation(BenchBlocks.SAMPLES)
    public int decodeLeastAndGreatest() {
        return blocks.decodeLeastAndGreatest();
    }

    @Benchmark
    @OperationsPerInvocation(BenchBlocks.SAMPLES)
    public int encode() {
        return blocks.encode();
    }

    /** The same of packed blocks. */
    @Benchmark
    @OperationsPerInvocation(BenchBlocks.SAMPLES)
    public int decodePacked() {
        return blocks.decodePacked();
    }

    /** Packed blocks decoded and linked. */
    @Benchmark
    @OperationsPerInvocation(BenchBlocks.SAMPLES)
    public int linkPacked() {
        return blocks.linkPacked();
    }

    /** Blocks decoded and through all detectors, nobody asking for seconds. */
    @Benchmark
    @OperationsPerInvocation(BenchBlocks.SAMPLES)
    public long detect() {
        return blocks.detect(new Found());
    }

    /** The same of packed blocks. */
    @Benchmark
    @OperationsPerInvocation(BenchBlocks.SAMPLES)
    public long detectPacked() {
        return blocks.detectPacked(new Found());
    }

    @Benchmark
    @OperationsPerInvocation(BenchBlocks.SAMPLES / 10)
    public int pack() {
        return blocks.pack();
    }

    private static final class Found implements FindingSink {
        private long told;

        @Override
        public void finding(Finding finding) {
            told++;
        }

        @Override
        public void second(Second second) {
            told++;
        }

        @Override
        public void cycle(long rangeCounts, long twiceMeanCounts, int halves) {
            told++;
        }

        @Override
        public void shaftReading(long tick, double rpm) {
            told++;
        }

        @Override
        public boolean takesSeconds() {
            return false;
        }
    }
}
