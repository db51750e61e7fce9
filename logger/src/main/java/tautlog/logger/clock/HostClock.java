package tautlog.logger.clock;

import org.jspecify.annotations.Nullable;
import tautlog.sample.Evidence;
import tautlog.sample.Instrument;

/**
 * UTC from this computer: a fix at the outing's start, then every 10 s by the instrument's counter, and at once after the
 * computer's clock was set, so that also an outing that ends soon after is dated by it.
 *
 * <p>A look that departs by more than 2 s from the fix before, though nobody set the clock, was held up on its way: the next
 * one is taken instead, unless they all are as late for a minute. One that is earlier than that shows that the fix before was held up.
 */
public final class HostClock implements TickDating {
    /** Chosen: six in each window of {@link tautlog.sample.OutingClock}, of which the least late counts. */
    static final long SECONDS_BETWEEN_FIXES = 10;

    private static final long LONGEST_HELD_SECONDS = 60;
    private static final long MICROS = 1_000_000;

    private @Nullable Evidence evidence;
    private long tickHz = 1;
    private long fixMicros;
    private boolean wasSet;
    private boolean hasFix;
    private long fixTick;

    @Override
    public void begin(Instrument instrument, Evidence to) {
        evidence = to;
        tickHz = instrument.tickHz();
        hasFix = false;
    }

    @Override
    public void firstSample(long tick) {
        // the host learns of a sample when its whole frame is there: too late for a fix
    }

    @Override
    public void stepped() {
        wasSet = true;
    }

    @Override
    public void now(long tick, long utcMicros) {
        if (evidence == null || (hasFix && !wasSet && !isDue(tick, utcMicros))) {
            return;
        }
        hasFix = true;
        wasSet = false;
        fixTick = tick;
        fixMicros = utcMicros;
        evidence.clock(tick, utcMicros);
    }

    private boolean isDue(long tick, long utcMicros) {
        long sinceTicks = tick - fixTick;
        long nominalMicros = sinceTicks / tickHz * MICROS + sinceTicks % tickHz * MICROS / tickHz;
        long lateMicros = utcMicros - fixMicros - nominalMicros;
        if (lateMicros < -BoardClock.STEP_MICROS) {
            return true; // nothing comes early: the fix before was held up
        }
        return sinceTicks
                >= tickHz * (lateMicros > BoardClock.STEP_MICROS ? LONGEST_HELD_SECONDS : SECONDS_BETWEEN_FIXES);
    }

    @Override
    public void ended(long lastTick) {
        evidence = null;
    }
}
