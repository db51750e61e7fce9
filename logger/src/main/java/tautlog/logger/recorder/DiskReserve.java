package tautlog.logger.recorder;

import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tautlog.logger.beacon.BeaconLamp;
import tautlog.logger.beacon.BeaconLamp.Trouble;

/**
 * The last room on the recordings' disk: before it is used up, beacon, status and a warning say so, and go on saying it until
 * there is more again. Recording goes on all the while. One thread looks, any asks.
 */
public final class DiskReserve {
    /**
     * How much is to be left. Chosen: at 1,000 samples a second and one byte each, 18 hours more of recording, which is a
     * working day after the one on which it was said.
     */
    public static final long BYTES = 64L << 20;

    /** With less than this no recording can be begun. Chosen: an empty one and its log take 0.1 MB. */
    private static final long LEAST_BYTES = 1L << 20;

    private static final Logger LOG = LoggerFactory.getLogger(DiskReserve.class);

    /** How much is left for this user, in bytes; empty when the system does not say. */
    @FunctionalInterface
    public interface FreeSpace {
        Optional<Long> bytes();
    }

    private final FreeSpace space;
    private final BeaconLamp lamp;
    private volatile boolean low;

    public DiskReserve(FreeSpace space, BeaconLamp lamp) {
        this.space = space;
        this.lamp = lamp;
    }

    /** Looks how much is left; what is not known changes nothing. */
    public void look(long nowNanos) {
        space.bytes().ifPresent(free -> say(free, nowNanos));
    }

    private void say(long free, long nowNanos) {
        boolean isLow = free < BYTES;
        if (isLow) {
            lamp.fault(Trouble.NEARLY_FULL, nowNanos);
        } else {
            lamp.mended(Trouble.NEARLY_FULL, nowNanos);
        }
        if (isLow && !low) {
            LOG.warn(
                    "the disk of the recordings is nearly full: {} MB left, less than the {} MB kept in reserve."
                            + " Copy old recordings elsewhere, check the copies with `tautlog verify`, delete them here",
                    free >> 20,
                    BYTES >> 20);
        } else if (low && !isLow) {
            LOG.info("the disk of the recordings has room again: {} MB left", free >> 20);
        }
        low = isLow;
    }

    /** Whether nothing is left now. */
    public boolean isUsedUp() {
        return space.bytes().filter(free -> free < LEAST_BYTES).isPresent();
    }

    public Optional<Long> freeBytes() {
        return space.bytes();
    }

    /** Whether less than the reserve was left at the last look. */
    public boolean isLow() {
        return low;
    }
}
