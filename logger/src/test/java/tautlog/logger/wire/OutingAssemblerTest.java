package tautlog.logger.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tautlog.sample.Tally;

/** Where an outing begins and ends, and which frames belong to it. */
class OutingAssemblerTest extends AssemblerFixture {
    @Test
    void passesOnAnOutingFromHelloToEnd() {
        hello(BOOT_7, 999_000);
        tension(500, 1_000_000, 1, 2);
        assembler.shaft(nextSeq(), 1_000_500, 5_400, new int[] {37_536, 500}, 2);
        assembler.health(nextSeq(), 1_000_600, 4_987, -125, 3);
        assembler.end();

        assertEquals(
                List.of(
                        "begin boot 7 tick 999000",
                        "now 999000",
                        "first 1000000",
                        "tension 500 tick 1000000 flags 0 [1, 2]",
                        "shaft 1000500 pulses 5400 [962964, 1000000]",
                        "health 1000600 lost 3",
                        "end",
                        "over 1004000"),
                told.lines);
        assertEquals(Tally.NONE, told.tally);
    }

    @Test
    void unwrapsTicksNumbersAndPulses() {
        hello(BOOT_7, WRAP - 5_000);
        tension(WRAP - 2, WRAP - 4_000, 1, 2);
        assembler.shaft(nextSeq(), WRAP - 1_000, WRAP - 1, new int[0], 0);
        tension(WRAP, WRAP, 3);
        assembler.shaft(nextSeq(), 99_000, 1, new int[] {99_500, 0}, 2);
        hello(BOOT_7, WRAP + 100_000);

        assertEquals(
                List.of(
                        "tension 4294967294 tick 4294963296 flags 0 [1, 2]",
                        "shaft 4294966296 pulses 4294967295 []",
                        "tension 4294967296 tick 4294967296 flags 0 [3]",
                        "shaft 4295066296 pulses 4294967297 [4294966796, 4295066296]",
                        "now 4295067296"),
                told.only("tension", "shaft", "now 42950"));
    }

    @Test
    void keepsATickOneBatchBeforeAnotherFramesTick() {
        hello(BOOT_7, 5_000);
        tension(0, WRAP - 100_000, 1);

        assertEquals(List.of("tension 0 tick -100000 flags 0 [1]"), told.only("tension"));
    }

    @Test
    void givesFramesHeldUntilTheFirstHelloToItsOuting() {
        tension(10, 20_000, 1);
        tension(11, 22_000, 2);
        after(1.9);
        hello(BOOT_7, 23_000);
        tension(12, 24_000, 3);

        assertEquals(
                List.of(
                        "begin boot 7 tick 20000",
                        "first 20000",
                        "tension 10 tick 20000 flags 0 [1]",
                        "tension 11 tick 22000 flags 0 [2]",
                        "now 23000",
                        "tension 12 tick 24000 flags 0 [3]"),
                told.lines);
    }

    @Test
    void countsAsLostWhatWaitsLongerThanTwoSecondsForTheFirstHello() {
        tension(10, 20_000, 1);
        after(1.5);
        tension(760, 1_520_000, 2);
        after(0.6);
        hello(BOOT_7, 2_120_000);
        assembler.end();

        assertEquals(List.of("tension 760 tick 1520000 flags 0 [2]"), told.only("tension"));
        assertEquals(new Tally(Map.of(), 0, 0, 1), told.tally);
    }

    @Test
    void countsAsLostWhatIsStillHeldWhenTheStreamEndsWithoutHello() {
        tension(10, 20_000, 1);
        assembler.end();

        assertEquals(List.of(), told.lines);
        assertEquals(1, assembler.counts().tally().heldFrames());
    }

    @Test
    void givesToTheFirstHelloNoFrameOfTheBootBefore() {
        tension(900_000, 1_800_000_000, 1);
        hello(BOOT_8, 100);
        tension(0, 1_000, 2);
        assembler.end();

        assertEquals(List.of("tension 0 tick 1000 flags 0 [2]"), told.only("tension"));
        assertEquals(1, told.tally.heldFrames());
    }

    @Test
    void splitsHeldFramesWhereNumbersStartAgain() {
        tension(900, 1_000_000, 1);
        tension(0, 1_010_000, 2);
        tension(1, 1_012_000, 3);
        hello(BOOT_8, 1_013_000);
        assembler.end();

        assertEquals(
                List.of("tension 0 tick 1010000 flags 0 [2]", "tension 1 tick 1012000 flags 0 [3]"),
                told.only("tension"));
        assertEquals(1, told.tally.heldFrames());
    }

    @Test
    void beginsAnOutingAtAHelloOfAnotherBoot() {
        hello(BOOT_7, 1_000);
        tension(0, 2_000, 1);
        seq = 0;
        hello(BOOT_8, 500);
        tension(0, 600, 2);
        assembler.end();

        assertEquals(
                List.of("begin boot 7 tick 1000", "end", "begin boot 8 tick 500", "end"), told.only("begin", "end"));
        assertEquals(Tally.NONE, told.tally);
    }

    @Test
    void givesHeldFramesToTheNewBootWhenItsFirstHelloWasLost() {
        hello(BOOT_7, 1_000);
        tension(5_000, 10_000_000, 1);
        seq = 1;
        tension(0, 2_000, 2);
        tension(1, 4_000, 3);
        assertEquals(1, told.only("tension").size());
        hello(BOOT_8, 6_000);
        assembler.end();

        assertEquals(
                List.of(
                        "tension 5000 tick 10000000 flags 0 [1]",
                        "end",
                        "begin boot 8 tick 2000",
                        "tension 0 tick 2000 flags 0 [2]",
                        "tension 1 tick 4000 flags 0 [3]",
                        "end"),
                told.only("tension", "begin boot 8", "end"));
        assertEquals(Tally.NONE, told.tally);
    }

    @Test
    void beginsAnOutingAfterASilenceByTicks() {
        hello(BOOT_7, 1_000);
        tension(0, 2_000, 1);
        long later = 2_000 + (1L << 30) + 1;
        tension(536_871, later, 2);
        hello(BOOT_7, later + 1_000);

        assertEquals(List.of("begin boot 7 tick 1000", "end", "begin boot 7 tick " + later), told.only("begin", "end"));
        assertEquals(Tally.NONE, assembler.counts().tally());
    }

    @Test
    void keepsTheOutingThroughASilenceOfJustSoManyTicks() {
        hello(BOOT_7, 1_000);
        tension(0, 2_000, 1);
        tension(536_870, 2_000 + (1L << 30), 2);

        assertEquals(2, told.only("tension").size());
        assertEquals(List.of("begin boot 7 tick 1000"), told.only("begin", "end"));
    }

    @Test
    void beginsAnOutingAfterASilenceThatWrappedTheWholeCounter() {
        hello(BOOT_7, 1_000);
        tension(0, 2_000, 1);
        after(4_295.0);
        tension(2_147_483, 3_000, 2);
        hello(BOOT_7, 4_000);

        assertEquals(List.of("begin boot 7 tick 1000", "end", "begin boot 7 tick 3000"), told.only("begin", "end"));
    }

    @Test
    void holdsAFrameWithALaterNumberAndAnEarlierTick() {
        hello(BOOT_7, 1_000_000);
        tension(0, 1_002_000, 1);
        seq = 0;
        tension(700, 200_000, 2);
        assertEquals(1, told.only("tension").size());
        hello(BOOT_8, 201_000);

        assertEquals(
                List.of("begin boot 8 tick 200000", "tension 700 tick 200000 flags 0 [2]"),
                told.only("begin boot 8", "tension 700"));
    }

    @Test
    void holdsAFrameWithTheNextNumberAtATimeThatDoesNotFitWhileOthersAreHeld() {
        hello(BOOT_7, 1_000_000);
        tension(0, 1_002_000, 1);
        seq = 0;
        tension(0, 1_102_000, 2);
        tension(1, 1_104_000, 3);
        assertEquals(1, told.only("tension").size());
        hello(BOOT_8, 1_105_000);

        assertEquals(
                List.of(
                        "tension 0 tick 1002000 flags 0 [1]",
                        "tension 0 tick 1102000 flags 0 [2]",
                        "tension 1 tick 1104000 flags 0 [3]"),
                told.only("tension"));
    }

    @Test
    void holdsAShaftFrameWithFewerPulsesAndWhatFollowsIt() {
        hello(BOOT_7, 1_000);
        assembler.shaft(nextSeq(), 100_000, 500, new int[0], 0);
        seq = 0;
        assembler.shaft(nextSeq(), 200_000, 2, new int[0], 0);
        tension(3, 201_000, 1);
        assertEquals(List.of(), told.only("tension"));
        hello(BOOT_8, 202_000);

        assertEquals(
                List.of(
                        "shaft 100000 pulses 500 []",
                        "end",
                        "shaft 200000 pulses 2 []",
                        "tension 3 tick 201000 flags 0 [1]"),
                told.only("shaft", "end", "tension"));
    }
}
