package tautlog.logger.clock;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import tautlog.sample.ClockFix;
import tautlog.sample.Instrument;
import tautlog.sample.OutingClock;
import tautlog.sample.QuietEvidence;

class TickDatingTest {
    private static final long HZ = 1_000_000;
    private static final Instrument INSTRUMENT = new Instrument("TL-0001", 1, 0, 7, HZ, 500_000, 8_388_607, 6);
    private static final Instant START = Instant.parse("2026-05-04T07:00:00Z");

    private final Fixes first = new Fixes();
    private final Fixes second = new Fixes();

    @Test
    void hostClockMakesAFixAtTheStartAndThenEveryTenSeconds() {
        HostClock clock = new HostClock();
        clock.begin(INSTRUMENT, first);
        for (int second = 0; second <= 25; second++) {
            clock.now(500 + second * HZ, 7_000 + second * 1_000_000L);
        }

        assertEquals(
                List.of(
                        new ClockFix(500, 7_000),
                        new ClockFix(500 + 10 * HZ, 10_007_000),
                        new ClockFix(500 + 20 * HZ, 20_007_000)),
                first.fixes);
    }

    @Test
    void hostClockMakesAFixAtOnceWhenTheClockWasSet() {
        HostClock clock = new HostClock();
        clock.begin(INSTRUMENT, first);
        clock.now(0, 0);
        clock.now(HZ, 1_000_000);
        clock.stepped();
        clock.now(2 * HZ, 90_000_000);
        clock.now(3 * HZ, 91_000_000);
        clock.ended(3 * HZ);

        assertEquals(List.of(new ClockFix(0, 0), new ClockFix(2 * HZ, 90_000_000)), first.fixes);
    }

    @Test
    void hostClockTakesTheNextLookForOneThatWasHeldUpForMoreThanTwoSeconds() {
        HostClock clock = new HostClock();
        clock.begin(INSTRUMENT, first);
        clock.now(0, 0);
        clock.now(10 * HZ, 12_000_001);
        clock.now(11 * HZ, 11_000_000);

        assertEquals(List.of(new ClockFix(0, 0), new ClockFix(11 * HZ, 11_000_000)), first.fixes);
    }

    @Test
    void hostClockMendsAFixThatWasHeldUpAtOnce() {
        HostClock clock = new HostClock();
        clock.begin(INSTRUMENT, first);
        clock.now(0, 5_000_000);
        clock.now(HZ, 1_000_000);

        assertEquals(List.of(new ClockFix(0, 5_000_000), new ClockFix(HZ, 1_000_000)), first.fixes);
    }

    @Test
    void hostClockBelievesADepartureThatStaysForAMinute() {
        HostClock clock = new HostClock();
        clock.begin(INSTRUMENT, first);
        clock.now(0, 0);
        for (int second = 1; second <= 61; second++) {
            clock.now(second * HZ, second * 1_000_000L + 5_000_000);
        }

        assertEquals(List.of(new ClockFix(0, 0), new ClockFix(60 * HZ, 65_000_000)), first.fixes);
    }

    @Test
    void hostClockBeginsAnewWithEveryOuting() {
        HostClock clock = new HostClock();
        clock.begin(INSTRUMENT, first);
        clock.now(9 * HZ, 1);
        clock.ended(9 * HZ);
        clock.now(10 * HZ, 2);
        clock.begin(INSTRUMENT, second);
        clock.now(3, 5);

        assertEquals(List.of(new ClockFix(9 * HZ, 1)), first.fixes);
        assertEquals(List.of(new ClockFix(3, 5)), second.fixes);
    }

    @Test
    void deviceClockPutsTheFirstSampleAtTheGivenInstant() {
        DeviceClock clock = new DeviceClock(START);
        clock.begin(INSTRUMENT, first);
        clock.now(900, 77);
        clock.firstSample(1_000);

        OutingClock utc = OutingClock.of(first.fixes, HZ);
        assertEquals(START, utc.instant(1_000).orElseThrow());
        assertEquals(START.plusSeconds(3_600), utc.instant(1_000 + 3_600 * HZ).orElseThrow());
    }

    @Test
    void deviceClockBeginsALaterOutingWhereTheOneBeforeWasHeardLast() {
        DeviceClock clock = new DeviceClock(START);
        clock.begin(INSTRUMENT, first);
        clock.firstSample(1_000);
        clock.ended(1_000 + 60 * HZ);
        clock.begin(INSTRUMENT, second);
        clock.firstSample(42);

        assertEquals(
                START.plusSeconds(60),
                OutingClock.of(second.fixes, HZ).instant(42).orElseThrow());
    }

    /** Keeps the clock fixes alone. */
    private static final class Fixes extends QuietEvidence {
        final List<ClockFix> fixes = new ArrayList<>();

        @Override
        public void clock(long tick, long utcMicros) {
            fixes.add(new ClockFix(tick, utcMicros));
        }
    }
}
