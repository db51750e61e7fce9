package tautlog.logger.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import org.junit.jupiter.api.Test;
import tautlog.sample.Evidence;
import tautlog.sample.Instrument;
import tautlog.sample.QuietEvidence;

class NoAllocationTest {
    private static final int FRAMES = 20_000;
    private static final int SAMPLES_A_FRAME = 10;

    @Test
    void readingFramesIntoAnOutingAllocatesNothingPerSample() {
        // given: HELLO each second, 50 TENSION and 10 SHAFT frames a second
        byte[] stream = stream();
        Deaf deaf = new Deaf();
        OutingAssembler assembler = new OutingAssembler(deaf);
        FrameDecoder decoder = new FrameDecoder();
        int half = stream.length / 2;
        decoder.feed(stream, 0, half, assembler);
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long before = threads.getCurrentThreadAllocatedBytes();

        decoder.feed(stream, half, stream.length - half, assembler);

        long allocated = threads.getCurrentThreadAllocatedBytes() - before;
        assertEquals(FRAMES * SAMPLES_A_FRAME, deaf.samples);
        // half of 200,000 samples; what the measurement itself allocates stays far below one byte a sample
        assertTrue(allocated < FRAMES * SAMPLES_A_FRAME / 2 / 10, allocated + " bytes");
    }

    private static byte[] stream() {
        FrameEncoder encoder = new FrameEncoder();
        byte[] out = new byte[FRAMES * 80];
        int[] counts = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10};
        int[] ages = {60_000, 30_000, 100};
        int end = 0;
        int seq = 0;
        for (int i = 0; i < FRAMES; i++) {
            long tick = i * 20_000L;
            if (i % 50 == 0) {
                end = encoder.hello(out, end, seq++, WireVectorsTest.INSTRUMENT, tick);
            }
            end = encoder.tension(out, end, seq++, tick, i * 10L, 0, counts, 0, SAMPLES_A_FRAME);
            if (i % 5 == 0) {
                end = encoder.shaft(out, end, seq++, tick + 1, i * 3L / 5 + 3, ages, 3);
            }
            seq &= 0xff;
        }
        return java.util.Arrays.copyOf(out, end);
    }

    /** Counts the samples and keeps nothing. */
    private static final class Deaf extends QuietEvidence implements OutingSink {
        int samples;

        @Override
        public Evidence begin(Instrument instrument, long firstTick) {
            return this;
        }

        @Override
        public void firstSample(long tick) {}

        @Override
        public void now(long tick) {}

        @Override
        public void selector(long atNumber, int position) {}

        @Override
        public void ended(long lastTick) {}

        @Override
        public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
            samples += n;
        }
    }
}
