package tautlog.logger.clock;

import org.jspecify.annotations.Nullable;
import tautlog.sample.Evidence;
import tautlog.sample.Instrument;

/** UTC from this computer: a fix at the outing's start and then every 10 s, by the instrument's counter. */
public final class HostClock implements TickDating {
    /** Chosen: six in each window of {@link tautlog.sample.OutingClock}, of which the least late counts. */
    static final long SECONDS_BETWEEN_FIXES = 10;

    private @Nullable Evidence evidence;
    private long ticksBetweenFixes;
    private boolean hasFix;
    private long fixTick;

    @Override
    public void begin(Instrument instrument, Evidence to) {
        evidence = to;
        ticksBetweenFixes = SECONDS_BETWEEN_FIXES * instrument.tickHz();
        hasFix = false;
    }

    @Override
    public void firstSample(long tick) {
        // the host learns of a sample when its whole frame is there: too late for a fix
    }

    @Override
    public void now(long tick, long utcMicros) {
        if (evidence == null || (hasFix && tick - fixTick < ticksBetweenFixes)) {
            return;
        }
        hasFix = true;
        fixTick = tick;
        evidence.clock(tick, utcMicros);
    }

    @Override
    public void ended(long lastTick) {
        evidence = null;
    }
}
