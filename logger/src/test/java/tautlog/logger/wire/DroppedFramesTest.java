package tautlog.logger.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tautlog.sample.Tally;

/** What an assembler drops, and that it counts it. */
class DroppedFramesTest extends AssemblerFixture {
    @Test
    void dropsAndCountsARepeatWhenTheNextHelloShowsTheSameBoot() {
        hello(BOOT_7, 1_000);
        tension(0, 2_000, 1);
        tension(1, 4_000, 2);
        seq--;
        tension(1, 4_000, 2);
        seq++;
        tension(3, 8_000, 4);
        assertEquals(2, told.only("tension").size());
        hello(BOOT_7, 10_000);
        assembler.end();

        assertEquals(3, told.only("tension").size());
        assertEquals(new Tally(Map.of(), 1, 1, 0), told.tally);
    }

    @Test
    void dropsARepeatAtOnceWhenTheNextFrameGoesOnExactly() {
        hello(BOOT_7, 1_000);
        tension(0, 2_000, 1);
        seq--;
        tension(0, 2_000, 1);
        tension(1, 4_000, 2);

        assertEquals(
                List.of("tension 0 tick 2000 flags 0 [1]", "tension 1 tick 4000 flags 0 [2]"), told.only("tension"));
        assertEquals(new Tally(Map.of(), 0, 1, 0), assembler.counts().tally());
    }

    @Test
    void takesHeldFramesAsOfTheSameBootWhenTheStreamEnds() {
        hello(BOOT_7, 1_000);
        tension(0, 2_000, 1);
        tension(0, 2_000, 1);
        tension(5, 12_000, 2);
        assembler.end();

        assertEquals(2, told.only("tension").size());
        assertEquals(1, told.tally.repeatedFrames());
    }

    @Test
    void countsAsLostWhatStaysUndecidedForTwoSeconds() {
        hello(BOOT_7, 1_000);
        tension(0, 2_000, 1);
        tension(0, 2_000, 1);
        after(2.1);
        tension(1_050, 2_102_000, 2);
        assembler.end();

        assertEquals(2, told.only("tension").size());
        assertEquals(new Tally(Map.of(), 0, 0, 1), told.tally);
    }

    @Test
    void countsLostFramesByTheSequenceNumber() {
        hello(BOOT_7, 1_000);
        seq = 250;
        tension(0, 2_000, 1);
        seq = 3;
        tension(1, 4_000, 2);

        assertEquals(249 + 8, assembler.counts().tally().lostFrames());
    }

    @Test
    void countsRejectionsByNameAndTellsThemAtMostOnceASecond() {
        assembler.rejected(FrameFault.BAD_CRC);
        hello(BOOT_7, 1_000);
        after(0.5);
        assertEquals(Tally.NONE, told.tally);
        after(0.5);
        assertEquals(new Tally(Map.of("BAD_CRC", 1L), 0, 0, 0), told.tally);
        assembler.rejected(FrameFault.BAD_COBS);
        assembler.rejected(FrameFault.BAD_CRC);
        assembler.end();

        assertEquals(new Tally(Map.of("BAD_COBS", 1L, "BAD_CRC", 2L), 0, 0, 0), told.tally);
    }

    @Test
    void ignoresAndCountsOtherChannels() {
        hello(BOOT_7, 1_000);
        assembler.tension(nextSeq(), 2_000, 0, 0x10, new int[] {9}, 1);
        tension(0, 2_000, 1);

        assertEquals(1, told.only("tension").size());
        assertEquals(1, assembler.counts().otherChannelFrames());
        assertEquals(Tally.NONE, assembler.counts().tally());
    }

    @Test
    void dropsAShaftFrameThatContradictsTheOneBefore() {
        hello(BOOT_7, 1_000);
        assembler.shaft(nextSeq(), 100_000, 10, new int[] {5_000}, 1);
        assembler.shaft(nextSeq(), 200_000, 11, new int[] {70_000, 20_000}, 2);
        assembler.shaft(nextSeq(), 300_000, 13, new int[] {20_000}, 1);

        assertEquals(List.of("shaft 100000 pulses 10 [95000]", "shaft 300000 pulses 13 [280000]"), told.only("shaft"));
        assertEquals(1, assembler.counts().tally().repeatedFrames());
    }

    @Test
    void dropsAndCountsRepeatsOfHelloShaftAndHealth() {
        for (int time = 0; time < 2; time++) {
            assembler.hello(0, BOOT_7, 1_000);
            assembler.shaft(1, 2_000, 5, new int[] {10}, 1);
            assembler.health(2, 3_000, 5_000, 200, 0);
        }

        assertEquals(List.of("shaft 2000 pulses 5 [1990]", "health 3000 lost 0"), told.only("shaft", "health"));
        assertEquals(1, told.only("now").size());
        assertEquals(3, assembler.counts().tally().repeatedFrames());
    }

    @Test
    void comparesSequenceNumbersInOrderThoughAnotherChannelComesBetween() {
        tension(10, 20_000, 1);
        assembler.tension(nextSeq(), 21_000, 0, 0x20, new int[] {9}, 1);
        tension(11, 22_000, 2);
        hello(BOOT_7, 23_000);

        assertEquals(2, told.only("tension").size());
        assertEquals(Tally.NONE, assembler.counts().tally());
    }
}
