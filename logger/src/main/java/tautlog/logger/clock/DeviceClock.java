package tautlog.logger.clock;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import org.jspecify.annotations.Nullable;
import tautlog.sample.Evidence;
import tautlog.sample.Instrument;

/**
 * UTC from the instrument's counter alone: the first sample was taken at a given instant, and time runs as the counter
 * does. For replays, demonstrations and tests.
 *
 * <p>A later outing of the same run begins at the moment at which the one before was last heard: how long the pause was,
 * the counter does not say, so it is left out.
 */
public final class DeviceClock implements TickDating {
    private static final long MICROS = 1_000_000;

    private @Nullable Evidence evidence;
    private long tickHz = 1;
    private long startMicros;
    private boolean hasSample;
    private long firstTick;

    /** @param start the instant of the first outing's first sample */
    public DeviceClock(Instant start) {
        startMicros = ChronoUnit.MICROS.between(Instant.EPOCH, start);
    }

    @Override
    public void begin(Instrument instrument, Evidence to) {
        evidence = to;
        tickHz = instrument.tickHz();
        hasSample = false;
    }

    @Override
    public void firstSample(long tick) {
        hasSample = true;
        firstTick = tick;
        if (evidence != null) {
            evidence.clock(tick, startMicros);
        }
    }

    @Override
    public void now(long tick, long utcMicros) {
        // the host's time is not wanted
    }

    @Override
    public void stepped() {
        // the host's time is not wanted
    }

    @Override
    public void ended(long lastTick) {
        if (hasSample) {
            // rounded up, so that the next outing does not begin before this one's last tick
            startMicros -= Math.floorDiv(-(lastTick - firstTick) * MICROS, tickHz);
        }
        evidence = null;
    }
}
