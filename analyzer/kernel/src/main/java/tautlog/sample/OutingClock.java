package tautlog.sample;

import java.math.BigInteger;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;

/**
 * Says when a tick was, from the fixes of its outing. Whole numbers only: the same fixes give the same times everywhere.
 *
 * <pre>
 *   utc                       . × × |        ×  a fix: late by what the line and the computer took
 *    ▲               ×  . ⊗ ˙       |        ⊗  the least late of its 60 s, which count
 *    │        × . ⊗ ˙               |        .  between them straight lines, outside the nominal rate
 *    │  .  ⊗ ˙       |              |
 *    └──────────────────────────────────▶ tick
 * </pre>
 *
 * <p>The least late fix of a window is the one with the smallest utc − tick / tickHz, the earliest of equals; windows of 60 s
 * are counted from the first fix that counts. A fix that departs by more than 2 s from the nominal run of the one before
 * shows that somebody set the computer's clock: only the fixes after the last such step count, and the whole outing is
 * dated from them. An error that stays is the least delay of the line, some milliseconds, always late. Of two counting
 * fixes whose times do not rise (a clock put back by less than 2 s) the later counts, so that time never goes back.
 */
public final class OutingClock {
    /** Chosen: far beyond any delay of a line that works, far below what somebody would set a clock by. */
    private static final long STEP_MICROS = 2_000_000;

    /** Chosen: six fixes at one each 10 s, and a drift of 100 millionths stays below 6 ms within it. */
    private static final long WINDOW_SECONDS = 60;

    private static final long MICROS = 1_000_000;

    private final long tickHz;
    private final long[] ticks;
    private final long[] utcMicros;

    private OutingClock(long tickHz, List<ClockFix> counting) {
        this.tickHz = tickHz;
        ticks = counting.stream().mapToLong(ClockFix::tick).toArray();
        utcMicros = counting.stream().mapToLong(ClockFix::utcMicros).toArray();
    }

    /**
     * Makes the clock of one outing.
     *
     * @param fixes in the order in which they were made; none gives a clock that knows no time
     * @param tickHz 1,000 to 4,000,000
     */
    public static OutingClock of(List<ClockFix> fixes, long tickHz) {
        List<ClockFix> sinceStep = sinceLastStep(fixes, tickHz);
        return new OutingClock(tickHz, rising(leastLate(sinceStep, tickHz)));
    }

    /** Microseconds since 1970-01-01T00:00Z at {@code tick}, cut to whole ones; empty when there is no fix. */
    public OptionalLong utcMicros(long tick) {
        return ticks.length == 0 ? OptionalLong.empty() : OptionalLong.of(at(tick));
    }

    /** The instant of {@code tick}, to the microsecond; empty when there is no fix. */
    public Optional<Instant> instant(long tick) {
        return ticks.length == 0 ? Optional.empty() : Optional.of(Instant.EPOCH.plus(at(tick), ChronoUnit.MICROS));
    }

    private long at(long tick) {
        int found = Arrays.binarySearch(ticks, tick);
        int before = found >= 0 ? found : -found - 2;
        if (before < 0) {
            return nominal(0, tick);
        }
        if (before == ticks.length - 1) {
            return nominal(before, tick);
        }
        long span = ticks[before + 1] - ticks[before];
        long rise = utcMicros[before + 1] - utcMicros[before];
        return utcMicros[before] + scaled(tick - ticks[before], rise, span);
    }

    private long nominal(int fix, long tick) {
        return utcMicros[fix] + scaled(tick - ticks[fix], MICROS, tickHz);
    }

    private static List<ClockFix> sinceLastStep(List<ClockFix> fixes, long tickHz) {
        int begin = 0;
        for (int i = 1; i < fixes.size(); i++) {
            if (Math.abs(lateness(fixes.get(i), fixes.get(i - 1), tickHz)) > STEP_MICROS) {
                begin = i;
            }
        }
        return fixes.subList(begin, fixes.size());
    }

    /** By how many microseconds {@code fix} is later than the nominal run from {@code before}. */
    private static long lateness(ClockFix fix, ClockFix before, long tickHz) {
        return fix.utcMicros() - before.utcMicros() - scaled(fix.tick() - before.tick(), MICROS, tickHz);
    }

    private static List<ClockFix> leastLate(List<ClockFix> fixes, long tickHz) {
        TreeMap<Long, ClockFix> best = new TreeMap<>();
        for (ClockFix fix : fixes) {
            long window = Math.floorDiv(fix.tick() - fixes.get(0).tick(), WINDOW_SECONDS * tickHz);
            best.merge(window, fix, (kept, next) -> lateness(next, kept, tickHz) < 0 ? next : kept);
        }
        return best.values().stream()
                .sorted(Comparator.comparingLong(ClockFix::tick))
                .toList();
    }

    private static List<ClockFix> rising(List<ClockFix> fixes) {
        List<ClockFix> rising = new ArrayList<>();
        for (ClockFix fix : fixes) {
            while (!rising.isEmpty() && rising.get(rising.size() - 1).utcMicros() >= fix.utcMicros()) {
                rising.remove(rising.size() - 1);
            }
            rising.add(fix);
        }
        return rising;
    }

    /** {@code a · b / c}, rounded down, exact however large the product. */
    private static long scaled(long a, long b, long c) {
        long product = a * b;
        if (Math.multiplyHigh(a, b) == product >> 63) {
            return Math.floorDiv(product, c);
        }
        BigInteger[] parts =
                BigInteger.valueOf(a).multiply(BigInteger.valueOf(b)).divideAndRemainder(BigInteger.valueOf(c));
        return parts[1].signum() < 0 ? parts[0].longValue() - 1 : parts[0].longValue();
    }
}
