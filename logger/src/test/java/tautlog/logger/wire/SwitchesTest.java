package tautlog.logger.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

/** The instrument's switches. Source: {@code firmware-notes/wire.md}, INPUT. */
class SwitchesTest extends AssemblerFixture {
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
    void takesClutchAndBrakeForUnknownWhenNoInputCameForMoreThanThreeSeconds() {
        hello(BOOT_7, 1_000);
        input(1_500, 2, 0b111, 0b110);
        tension(0, 2_000, 1);
        tension(1_499, 3_001_500, 1);
        assertEquals(1, told.only("input").size());
        tension(1_500, 3_001_501, 1);
        tension(1_501, 3_003_501, 1);
        input(3_004_000, 2, 0b111, 0b110);

        assertEquals(
                List.of(
                        "tension 1499 tick 3001500 flags 0 [1]",
                        "input at 1500 tick 3001501 selector 2 present 1 state 0",
                        "tension 1500 tick 3001501 flags 0 [1]",
                        "tension 1501 tick 3003501 flags 0 [1]",
                        "input at 1502 tick 3004000 selector 2 present 7 state 6"),
                told.only("input", "tension").subList(2, 7));
        assertEquals(List.of("selector 2 at 0"), told.only("selector"));
    }

    @Test
    void doesNotMarkAgainWhenAButtonThatStayedDownIsHeardOfAgain() {
        hello(BOOT_7, 1_000);
        tension(0, 2_000, 1);
        input(3_000, 0, 0b011, 0b011);
        tension(2_500, 5_002_000, 1);
        input(5_003_000, 0, 0b011, 0b011);

        assertEquals(List.of("mark at 1 \"\""), told.only("mark"));
    }
}
