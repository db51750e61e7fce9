package tautlog.sample;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;

class OutingClockTest {
    private static final long HZ = 1_000_000;
    /** 2026-05-04T07:00:00Z, an invented day. */
    private static final long START = Instant.parse("2026-05-04T07:00:00Z").getEpochSecond() * 1_000_000;

    private static ClockFix fix(double tickSeconds, double utcSeconds) {
        return new ClockFix(Math.round(tickSeconds * HZ), START + Math.round(utcSeconds * 1_000_000));
    }

    private static double secondsAt(OutingClock clock, double tickSeconds) {
        return (clock.utcMicros(Math.round(tickSeconds * HZ)).orElseThrow() - START) / 1e6;
    }

    @Test
    void knowsNoTimeWithoutFixes() {
        OutingClock clock = OutingClock.of(List.of(), HZ);

        assertEquals(OptionalLong.empty(), clock.utcMicros(5));
        assertEquals(Optional.empty(), clock.instant(5));
    }

    @Test
    void runsAtTheNominalRateOnBothSidesOfASingleFix() {
        OutingClock clock = OutingClock.of(List.of(fix(100, 0)), HZ);

        assertEquals(Optional.of(Instant.parse("2026-05-04T06:58:20Z")), clock.instant(0));
        assertEquals(Optional.of(Instant.parse("2026-05-04T07:00:00.5Z")), clock.instant(100_500_000));
        assertEquals(-105.0, secondsAt(clock, -5), "ticks below zero");
    }

    @Test
    void interpolatesBetweenTheLeastLateFixesOfTwoWindows() {
        // the first window's least late fix is at 10 s, the second's at 110 s; the counter runs 100 millionths slow
        List<ClockFix> fixes = List.of(fix(0, 0.3), fix(10, 10.0), fix(50, 50.2), fix(110, 110.01), fix(115, 115.4));

        OutingClock clock = OutingClock.of(fixes, HZ);

        assertEquals(10.0, secondsAt(clock, 10));
        assertEquals(60.005, secondsAt(clock, 60), "halfway");
        assertEquals(110.01, secondsAt(clock, 110));
        assertEquals(5.0, secondsAt(clock, 5), "before, nominal");
        assertEquals(120.01, secondsAt(clock, 120), "after, nominal");
    }

    @Test
    void datesTheWholeOutingFromAfterTheLastStep() {
        List<ClockFix> fixes = List.of(fix(0, -4_000_000), fix(10, -3_999_990), fix(20, 20), fix(30, 30.1));

        OutingClock clock = OutingClock.of(fixes, HZ);

        assertEquals(0.0, secondsAt(clock, 0));
        assertEquals(30.0, secondsAt(clock, 30), "the less late of the window");
    }

    @Test
    void takesADepartureOfJustTwoSecondsForDelayAndMoreForAStep() {
        OutingClock delayed = OutingClock.of(List.of(fix(0, 0), fix(10, 12)), HZ);
        OutingClock stepped = OutingClock.of(List.of(fix(0, 0), fix(10, 12.000001)), HZ);

        assertEquals(0.0, secondsAt(delayed, 0));
        assertEquals(2.000001, secondsAt(stepped, 0));
    }

    @Test
    void takesAStepBackLikeAStepForward() {
        OutingClock clock = OutingClock.of(List.of(fix(0, 3_600), fix(10, 10)), HZ);

        assertEquals(0.0, secondsAt(clock, 0));
    }

    @Test
    void leavesOutASingleFixThatWasHeldUpOnTheWay() {
        OutingClock clock = OutingClock.of(List.of(fix(0, 0), fix(10, 15), fix(20, 20)), HZ);

        assertEquals(20.0, secondsAt(clock, 20));
        assertEquals(10.0, secondsAt(clock, 10));
    }

    @Test
    void isExactOverManyHoursAtTheFastestCounter() {
        long hz = 4_000_000;
        long hours = 30 * 3_600;
        List<ClockFix> fixes =
                List.of(new ClockFix(0, START), new ClockFix(hours * hz, START + hours * 1_000_000 + 1_000_000));

        OutingClock clock = OutingClock.of(fixes, hz);

        assertEquals(OptionalLong.of(START + hours * 500_000 + 500_000), clock.utcMicros(hours * hz / 2));
        assertEquals(OptionalLong.of(START + hours * 1_000_000 + 1_000_000), clock.utcMicros(hours * hz));
    }

    @Property(tries = 300)
    void neverGoesBackHoweverLateTheFixesAre(
            @ForAll @Size(min = 1, max = 60) List<@IntRange(max = 1_900_000) Integer> delaysMicros,
            @ForAll @LongRange(min = 1_000, max = 4_000_000) long hz) {
        List<ClockFix> fixes = new ArrayList<>();
        for (int i = 0; i < delaysMicros.size(); i++) {
            fixes.add(new ClockFix(i * 10L * hz, START + i * 10_000_000L + delaysMicros.get(i)));
        }
        OutingClock clock = OutingClock.of(fixes, hz);

        long before = Long.MIN_VALUE;
        for (long tick = -5 * hz; tick <= fixes.size() * 10L * hz; tick += hz / 3 + 1) {
            long utc = clock.utcMicros(tick).orElseThrow();
            assertTrue(utc >= before);
            before = utc;
        }
    }

    @Property(tries = 300)
    void isAsLateAsTheLeastDelayOfEachMinute(
            @ForAll @Size(min = 12, max = 60) List<@IntRange(min = 3_000, max = 900_000) Integer> delaysMicros,
            @ForAll @IntRange(max = 5) int place) {
        // given: one fix of each minute is only 3 ms late
        List<ClockFix> fixes = new ArrayList<>();
        for (int i = 0; i < delaysMicros.size(); i++) {
            int delay = i % 6 == place ? 3_000 : delaysMicros.get(i);
            fixes.add(new ClockFix(i * 10 * HZ, START + i * 10_000_000L + delay));
        }

        OutingClock clock = OutingClock.of(fixes, HZ);

        long lastFull = (fixes.size() / 6 * 6 - 6) * 10L;
        for (long second = 0; second <= lastFull; second++) {
            assertEquals(second + 0.003, secondsAt(clock, second), 0.0);
        }
    }
}
