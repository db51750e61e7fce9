package tautlog.logger.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tautlog.logger.wire.LineCounts.OutingState;
import tautlog.sample.Instrument;

/** Two instruments whose frames come over one line: found out by a boot number that comes back. */
class TwoInstrumentsTest extends AssemblerFixture {
    private static final Instrument OTHER_ID = new Instrument("TL-0002", 1, 0, 9, 1_000_000, 500_000, 8_388_607, 6);

    /** HELLO and a frame of boot 7, then of the other, then HELLO of boot 7 again, all within 1.5 s. */
    private void interleave(Instrument other) {
        hello(BOOT_7, 1_000_000);
        tension(500, 1_001_000, 1, 2);
        after(0.5);
        hello(other, 77_000_000);
        tension(38_500, 77_001_000, 8, 9);
        after(0.5);
        hello(BOOT_7, 2_000_000);
    }

    @Test
    void endsTheOutingWithAMarkAndTakesNothingMore() {
        interleave(BOOT_8);
        tension(1_000, 2_001_000, 3, 4);
        tension(38_502, 77_005_000, 5);

        assertEquals(
                List.of("tension 500 tick 1001000 flags 0 [1, 2]", "tension 38500 tick 77001000 flags 0 [8, 9]"),
                told.only("tension"));
        assertEquals(1, told.only("mark at 38501 \"tautlogd: two instruments").size(), told.lines::toString);
        assertEquals(2, told.only("end").size());
        assertEquals(Map.of("TWO_INSTRUMENTS", 1L), told.tally.rejected(), "of the outing that ended by it");
        assertEquals(OutingState.TWO_INSTRUMENTS, assembler.counts().outing());
        assertEquals(Map.of("TWO_INSTRUMENTS", 2L), assembler.counts().tally().rejected());
    }

    @Test
    void findsOutOtherIdsToo() {
        interleave(OTHER_ID);

        assertEquals(OutingState.TWO_INSTRUMENTS, assembler.counts().outing());
    }

    @Test
    void staysSoWhileBothSpeakAndGoesOnWhenOneHasBeenAloneForFiveSeconds() {
        interleave(BOOT_8);
        for (int second = 1; second <= 30; second++) {
            after(0.5);
            hello(BOOT_8, 77_000_000 + second * 1_000_000L);
            after(0.5);
            hello(BOOT_7, 2_000_000 + second * 1_000_000L);
        }
        assertEquals(2, told.only("begin").size());

        // when: only boot 7
        for (int second = 31; second <= 35; second++) {
            after(0.9);
            hello(BOOT_7, 2_000_000 + second * 1_000_000L);
        }
        assertEquals(2, told.only("begin").size(), "4.5 s");
        after(0.9);
        hello(BOOT_7, 38_000_000);
        tension(19_000, 38_001_000, 6);

        // then
        assertEquals(3, told.only("begin").size());
        assertEquals(List.of("tension 19000 tick 38001000 flags 0 [6]"), told.only("tension 19000"));
        assertEquals(0, told.tally.lostFrames(), "what was left out is not lost a second time");
    }

    @Test
    void takesRestartsForRestarts() {
        hello(BOOT_7, 1_000_000);
        after(1);
        hello(BOOT_8, 1_000);
        after(1);
        hello(OTHER_ID, 1_000);

        assertEquals(3, told.only("begin").size());
        assertEquals(OutingState.ON, assembler.counts().outing());
    }

    @Test
    void takesABootNumberThatComesBackAfterTenSecondsForAnotherStart() {
        hello(BOOT_7, 1_000_000);
        after(5);
        hello(BOOT_8, 1_000);
        after(5);
        hello(BOOT_7, 1_000);

        assertEquals(OutingState.ON, assembler.counts().outing());
    }

    @Test
    void forgetsWhoSpokeOnAnotherLine() {
        hello(BOOT_7, 1_000_000);
        assembler.opened();
        hello(BOOT_8, 1_000);
        assembler.opened();
        hello(BOOT_7, 3_000_000);

        assertEquals(OutingState.ON, assembler.counts().outing());
    }
}
