package tautlog.logger.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tautlog.sample.Instrument;
import tautlog.sample.Tally;

class OutingAssemblerTest {
    /** 1 MHz counter, 500 Hz: 2,000 ticks a sample. */
    private static final Instrument BOOT_7 = new Instrument("TL-0001", 1, 0, 7, 1_000_000, 500_000, 8_388_607, 6);

    private static final Instrument BOOT_8 = new Instrument("TL-0001", 1, 0, 8, 1_000_000, 500_000, 8_388_607, 6);
    private static final long WRAP = 1L << 32;
    private static final long SECOND = 1_000_000_000L;

    private final ToldText told = new ToldText();
    private final OutingAssembler assembler = new OutingAssembler(told);
    private long nanos = 77 * SECOND;
    private int seq;

    @BeforeEach
    void arrive() {
        after(0);
    }

    private void after(double seconds) {
        nanos += Math.round(seconds * SECOND);
        assembler.arriving(nanos);
    }

    private int nextSeq() {
        return seq++ & 0xff;
    }

    private void hello(Instrument instrument, long tick) {
        assembler.hello(nextSeq(), instrument, tick % WRAP);
    }

    private void tension(long number, long tick, int... counts) {
        assembler.tension(nextSeq(), tick % WRAP, number % WRAP, 0, counts, counts.length);
    }

    private void input(long tick, int selector, int present, int state) {
        assembler.input(nextSeq(), tick, selector, present, state);
    }

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
    void passesOnSwitchesOnlyWhenTheyChangeAndAtTheNextSample() {
        hello(BOOT_7, 1_000);
        input(1_500, 2, 0b111, 0b010);
        tension(500, 2_000, 1, 2);
        input(1_001_500, 2, 0b111, 0b010);
        input(1_001_600, 3, 0b111, 0b000);

        assertEquals(
                List.of(
                        "input at 500 tick 1500 selector 2 present 7 state 2",
                        "selector 2 at 500",
                        "tension 500 tick 2000 flags 0 [1, 2]",
                        "input at 502 tick 1001600 selector 3 present 7 state 0",
                        "selector 3 at 502"),
                told.only("input", "selector", "tension"));
    }

    @Test
    void marksWhenTheButtonGoesDownAndNotWhileItStays() {
        hello(BOOT_7, 1_000);
        tension(500, 2_000, 1);
        input(3_000, 0, 0b001, 0b000);
        input(4_000, 0, 0b001, 0b001);
        input(5_000, 0, 0b001, 0b001);
        input(6_000, 0, 0b001, 0b000);
        input(7_000, 0, 0b000, 0b001);

        assertEquals(List.of("mark at 501 \"\""), told.only("mark"));
    }

    @Test
    void marksOnceWhenTheButtonWasPressedBeforeTheFirstSample() {
        hello(BOOT_7, 1_000);
        input(1_100, 0, 1, 1);
        input(1_200, 0, 1, 0);
        tension(500, 2_000, 1);

        assertEquals(
                List.of("input at 500 tick 1200 selector 0 present 1 state 0", "mark at 500 \"\""),
                told.only("input", "mark"));
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
