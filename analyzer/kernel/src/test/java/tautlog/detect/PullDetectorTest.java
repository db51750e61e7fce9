package tautlog.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import tautlog.detect.Finding.Pull;
import tautlog.fixtures.Findings;
import tautlog.fixtures.Outings;
import tautlog.fixtures.Rigs;
import tautlog.fixtures.Traces;
import tautlog.rig.Rig;

/** Settings are the defaults of {@code FINDINGS.md}: from 1500 N for 0.3 s, closed below 750 N for 3 s. 100 Hz, 1 N a count. */
class PullDetectorTest {
    private static final Rig RIG = Rigs.withLimit("40000", "20000");

    @Test
    void goesFromTheFirstToTheLastSampleThatIsHighEnough() {
        // given 1 s slack, 2 s at 5 kN, then slack for longer than 3 s
        Traces trace = Traces.atHertz(100).hold(0, 1).hold(5_000, 2).hold(0, 4);
        // when
        Pull pull = only(Outings.atHertz(100).samples(trace).detect(RIG));
        // then
        assertEquals(100, pull.startNumber());
        assertEquals(299, pull.endNumber());
        assertEquals(200, pull.samples());
        assertEquals(1_000_000, pull.countSum());
        assertEquals(5_000, pull.peak());
        assertEquals(List.of(200L, 0L, 0L, 0L, 0L), pull.bandSamples(), "5000 is a quarter of the limit, not above it");
        assertEquals(Known.UNKNOWN, pull.held());
        assertFalse(pull.hasGap() || pull.cutByGap() || pull.cutByEnd());
    }

    @Test
    void isALowerBoundWhenASampleToItsEndIsAtTheEndStop() {
        // given the end stop within the pull; a count below it; the lower end stop after its end
        Traces within =
                Traces.atHertz(100).hold(5_000, 1).of(8_388_607).hold(5_000, 1).hold(0, 4);
        Traces below =
                Traces.atHertz(100).hold(5_000, 1).of(8_388_606).hold(5_000, 1).hold(0, 4);
        Traces lower = Traces.atHertz(100).hold(5_000, 1).of(-8_388_608).hold(0, 4);
        // when, then
        assertTrue(only(Outings.atHertz(100).samples(within).detect(RIG)).atLeast());
        assertFalse(only(Outings.atHertz(100).samples(below).detect(RIG)).atLeast());
        assertFalse(only(Outings.atHertz(100).samples(lower).detect(RIG)).atLeast());
    }

    @Test
    void opensOnlyAfterThirtySamplesInARow() {
        Traces short29 = Traces.atHertz(100).hold(0, 1).samples(1_500, 29).hold(0, 4);
        Traces long30 = Traces.atHertz(100).hold(0, 1).samples(1_500, 30).hold(0, 4);
        assertEquals(
                List.of(), Outings.atHertz(100).samples(short29).detect(RIG).of(Pull.class));
        assertEquals(129, only(Outings.atHertz(100).samples(long30).detect(RIG)).endNumber());
    }

    @Test
    void staysOpenWhileTensionIsBelowHalfForLessThanThreeSeconds() {
        Traces trace = Traces.atHertz(100)
                .hold(2_000, 1)
                .samples(749, 299)
                .samples(750, 1)
                .samples(749, 299)
                .samples(1_500, 1)
                .samples(749, 300);
        Pull pull = only(Outings.atHertz(100).samples(trace).detect(RIG));
        assertEquals(699, pull.endNumber());
        assertEquals(700, pull.samples());
        assertFalse(pull.cutByEnd());
    }

    @Test
    void goesOnAcrossAShortGapWithoutCountingIt() {
        Outings outing = Outings.atHertz(100)
                .samples(Traces.atHertz(100).hold(2_000, 1))
                .gap(25)
                .samples(Traces.atHertz(100).hold(2_000, 1).hold(0, 4));
        Pull pull = only(outing.detect(RIG));
        assertEquals(224, pull.endNumber());
        assertEquals(200, pull.samples());
        assertTrue(pull.hasGap());
    }

    @Test
    void isCutByALongGap() {
        Outings outing = Outings.atHertz(100)
                .samples(Traces.atHertz(100).hold(2_000, 1).hold(1_000, 1))
                .gap(26)
                .samples(Traces.atHertz(100).hold(2_000, 1).hold(0, 4));
        List<Pull> pulls = outing.detect(RIG).of(Pull.class);
        assertEquals(2, pulls.size());
        assertEquals(99, pulls.get(0).endNumber());
        assertTrue(pulls.get(0).cutByGap());
        assertFalse(pulls.get(0).hasGap());
        assertEquals(226, pulls.get(1).startNumber());
    }

    @Test
    void pausesItsClosingTimerInAShortGapAndSaysSo() {
        Outings outing = Outings.atHertz(100)
                .samples(Traces.atHertz(100).hold(2_000, 1).samples(0, 150))
                .gap(20)
                .samples(Traces.atHertz(100).samples(0, 149).samples(2_000, 1).samples(0, 200))
                .gap(20)
                .samples(Traces.atHertz(100).samples(0, 100));
        Pull pull = only(outing.detect(RIG));
        assertEquals(419, pull.endNumber());
        assertTrue(pull.hasGap());
        assertFalse(pull.cutByEnd());
    }

    @Test
    void doesNotOpenAcrossAGap() {
        Outings outing = Outings.atHertz(100)
                .samples(Traces.atHertz(100).samples(2_000, 29))
                .gap(1)
                .samples(Traces.atHertz(100).samples(2_000, 29).hold(0, 4));
        assertEquals(List.of(), outing.detect(RIG).of(Pull.class));
    }

    @Test
    void countsItsOverloadsAndShocks() {
        // given a snap to 25 kN (limit 20 kN) that settles at 5 kN, and later another second above the limit
        Traces trace = Traces.atHertz(100)
                .hold(0, 1)
                .of(8_000, 25_000, 12_000)
                .hold(5_000, 4)
                .hold(21_000, 1)
                .hold(0, 4);
        Pull pull = only(Outings.atHertz(100).samples(trace).detect(RIG));
        assertEquals(2, pull.overloads());
        assertEquals(1, pull.shocks());
        assertEquals(25_000, pull.shareCounts());
        assertEquals(List.of(400L, 1L, 1L, 0L, 101L), pull.bandSamples());
    }

    @Test
    void takesShareAndHookupFromWhereTheShareIsGreatest() {
        // given 8 kN under a limit of 20 kN, then 6 kN under one of 10 kN
        Rig rig = Rigs.of("40000", List.of(Rigs.hookup("strong", "20000"), Rigs.hookup("weak", "10000")));
        Outings outing = Outings.atHertz(100)
                .hookup("strong")
                .samples(Traces.atHertz(100).hold(8_000, 1))
                .hookup("weak")
                .samples(Traces.atHertz(100).hold(6_000, 1))
                .hookup("strong")
                .samples(Traces.atHertz(100).hold(8_000, 1).hold(0, 4));
        Pull pull = only(outing.detect(rig));
        assertEquals("weak", pull.hookup());
        assertEquals(6_000, pull.shareCounts());
        assertEquals(8_000, pull.peak());
        assertEquals(List.of(0L, 200L, 100L, 0L, 0L), pull.bandSamples());
    }

    @Test
    void isHeldWhenTheShaftStandsStillThroughout() {
        Traces trace = Traces.atHertz(100).hold(0, 3).hold(5_000, 2).hold(0, 4);
        Findings still = Outings.atHertz(100).samples(trace).shaft(0, 9, 0).detect(RIG);
        Findings turning = Outings.atHertz(100).samples(trace).shaft(0, 9, 540).detect(RIG);
        assertEquals(Known.YES, only(still).held());
        assertEquals(200, only(still).heldSamples());
        assertEquals(Known.NO, only(turning).held());
        assertEquals(200, only(turning).winchingSamples());
        assertEquals(0, only(turning).heldSamples());
    }

    @Test
    void knowsNothingOfTheShaftMoreThanASecondAfterAReading() {
        // given readings up to 4 s only; the pull goes from 3 s to 6 s
        Traces trace = Traces.atHertz(100).hold(0, 3).hold(5_000, 3).hold(0, 4);
        Pull pull = only(Outings.atHertz(100).samples(trace).shaft(0, 4, 0).detect(RIG));
        // then the reading at 4.000 s sits at sample 400 and speaks for 401 to 500
        assertEquals(201, pull.heldSamples());
        assertEquals(Known.UNKNOWN, pull.held());
    }

    @Test
    void leavesAnEmptyOutingAndOneSampleAlone() {
        assertEquals(List.of(), Outings.atHertz(100).detect(RIG).told());
        assertEquals(
                List.of(),
                Outings.atHertz(100)
                        .samples(Traces.atHertz(100).of(9_000))
                        .detect(RIG)
                        .of(Pull.class));
    }

    private static Pull only(Findings findings) {
        List<Pull> pulls = findings.of(Pull.class);
        assertEquals(1, pulls.size(), () -> "pulls: " + pulls);
        return pulls.get(0);
    }
}
