package tautlog.logger.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a wrong baud rate makes of frames: bytes at full rate that mean nothing. */
class GarbageTest {
    /** 921,600 baud for five minutes. */
    private static final int BYTES = 92_160 * 300;

    private static final int READ = 4_096;

    /** @param share of the bytes that are zero, in percent: rare and frequent ends of pieces */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, 20})
    void minutesOfItCostNoMemoryAndMakeNoOuting(int share) {
        // given
        byte[] garbage = garbage(share);
        ToldText told = new ToldText();
        OutingAssembler assembler = new OutingAssembler(told);
        FrameDecoder decoder = new FrameDecoder();
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long before = threads.getCurrentThreadAllocatedBytes();

        // when
        for (int read = 0; read < BYTES / READ; read++) {
            assembler.arriving(read * 44_000_000L);
            decoder.feed(garbage, read % (garbage.length / READ) * READ, READ, assembler);
        }

        // then: 100 kB for five minutes is what measuring itself and the last tally take
        long allocated = threads.getCurrentThreadAllocatedBytes() - before;
        assertTrue(allocated < 100_000, allocated + " bytes");
        assertEquals(java.util.List.of(), told.lines);
        long rejected = assembler.counts().tally().rejectedFrames();
        assertEquals(share > 0, rejected > BYTES / 1_000, rejected + " rejected");
        assertEquals(LineCounts.OutingState.NONE, assembler.counts().outing());
    }

    @Test
    void aFrameAfterItIsRead() {
        byte[] garbage = garbage(1);
        ToldText told = new ToldText();
        OutingAssembler assembler = new OutingAssembler(told);
        FrameDecoder decoder = new FrameDecoder();
        assembler.arriving(0);
        decoder.feed(garbage, 0, garbage.length, assembler);
        byte[] frame = new byte[FrameEncoder.LONGEST_FRAME];

        decoder.feed(new byte[1], 0, 1, assembler);
        int n = new FrameEncoder().hello(frame, 0, 0, WireVectorsTest.INSTRUMENT, 5);
        decoder.feed(frame, 0, n, assembler);

        assertEquals(1, told.only("begin").size());
    }

    private static byte[] garbage(int zeroPercent) {
        Random random = new Random(zeroPercent);
        byte[] bytes = new byte[64 * READ];
        random.nextBytes(bytes);
        for (int i = 0; i < bytes.length; i++) {
            if (bytes[i] == 0) {
                bytes[i] = 1;
            }
            if (random.nextInt(100) < zeroPercent) {
                bytes[i] = 0;
            }
        }
        return bytes;
    }
}
