package tautlog.logger.clock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import tautlog.logger.clock.BoardClock.Own;
import tautlog.sample.ClockFix;
import tautlog.sample.Instrument;
import tautlog.sample.OutingClock;
import tautlog.sample.QuietEvidence;

/**
 * Random histories of a board: its clock begins anywhere from 1970 on and is set, right or wrong, at random moments; the
 * instrument's counter runs wrong by up to 100 millionths; HELLOs are late by up to 50 ms, some by seconds. What a tick is
 * said to have been is compared with the truth, as the clock told it after it was set last.
 */
class ClockHistoryTest {
    private static final long HZ = 1_000_000;
    private static final long START = micros("2026-05-04T23:10:00Z");
    private static final double WORST_DRIFT = 100e-6;
    /** Of a HELLO that is not held up. */
    private static final long GREATEST_DELAY = 50_000;

    private final List<ClockFix> fixes = new ArrayList<>();

    private static long micros(String instant) {
        return ChronoUnit.MICROS.between(Instant.EPOCH, Instant.parse(instant));
    }

    @Property(tries = 400)
    void datesEveryTickOfTheOutingByTheClockThatWasSetLast(@ForAll long seed) {
        // given
        Random random = new Random(seed);
        int seconds = 120 + random.nextInt(7_200);
        double rate = 1 + (2 * random.nextDouble() - 1) * WORST_DRIFT;
        long tickAtStart = random.nextInt(1 << 30);
        long offset = offset(random); // of the board's clock from the truth
        int stepsLeft = random.nextInt(5);
        BoardClock board = new BoardClock(Own.USED, () -> false);
        HostClock dating = new HostClock();
        dating.begin(new Instrument("TL-0001", 1, 0, 7, HZ, 500_000, 8_388_607, 6), new QuietEvidence() {
            @Override
            public void clock(long tick, long utcMicros) {
                fixes.add(new ClockFix(tick, utcMicros));
            }
        });
        fixes.clear();
        long told = 0; // how long the clock has been told of since it was set last

        // when: a HELLO each second; in the last 12 s none is held up, in the last 3 s the clock is not set
        for (int second = 0; second < seconds; second++) {
            if (second < seconds - 3
                    && stepsLeft > 0
                    && (random.nextInt(seconds / 5) == 0 || second == seconds - 4 && random.nextInt(3) == 0)) {
                stepsLeft--;
                offset = offset(random);
                told = 0;
            }
            long held = second < seconds - 12 && random.nextInt(100) == 0 ? random.nextInt(6_000_000) : 0;
            long delay = 1_000 + random.nextInt((int) GREATEST_DELAY - 1_000) + held;
            long arrived = second * 1_000_000L + delay;
            board.look(arrived * 1_000, START + arrived + offset, Optional.empty());
            if (board.steps() != told) {
                told = board.steps();
                dating.stepped();
            }
            long tick = tickAtStart + Math.round(second * rate * HZ);
            board.utcMicros().ifPresent(utc -> dating.now(tick, utc));
        }

        // then
        OutingClock clock = OutingClock.of(fixes, HZ);
        if (board.state() != BoardClock.State.KNOWN && fixes.isEmpty()) {
            assertEquals(Optional.empty(), clock.instant(tickAtStart), "an unknown time is not told");
            return;
        }
        if (board.state() != BoardClock.State.KNOWN) {
            return; // it was set back to before it can be: what was known before stands
        }
        long before = Long.MIN_VALUE;
        // the farthest from a fix is the other end of the outing
        double tolerance = GREATEST_DELAY + WORST_DRIFT * seconds * 1e6 + 1;
        for (int second = 0; second < seconds; second++) {
            long utc = clock.utcMicros(tickAtStart + Math.round(second * rate * HZ))
                    .orElseThrow();
            long truth = START + second * 1_000_000L + offset;
            assertEquals(truth, utc, tolerance, "seed " + seed + ", second " + second);
            assertTrue(utc >= before, "time goes back");
            before = utc;
        }
    }

    /** Right, or wrong by hours or days either way, or 1970; never by less than a step that can be told. */
    private static long offset(Random random) {
        return switch (random.nextInt(4)) {
            case 0 -> 0;
            case 1 -> -START;
            case 2 -> 3_000_000L + random.nextInt(2_000_000_000);
            default -> -(3_000_000L + (long) random.nextInt(40) * 3_600_000_000L);
        };
    }
}
