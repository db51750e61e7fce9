package tautlog.detect;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.Map;
import tautlog.rig.Hookup;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Evidence;
import tautlog.sample.Instrument;

/**
 * What the operator's beacon shows for one frame, at once. Source: {@code firmware-notes/wire.md}, BEACON.
 *
 * <p>The holds (a state stays for a while) and faults outside the sensor are the logger's. A clear beacon is no permission to
 * approach the line.
 */
public final class Beacon {
    public static final int CLEAR = 0;
    /** Share 0.8 or more, or the limit is only known as "at most". */
    public static final int CAUTION = 1;

    public static final int OVER_LIMIT = 2;
    /** The sensor says nothing, or only a bound. */
    public static final int FAULT = 3;

    private static final BigDecimal CAUTION_SHARE = new BigDecimal("0.8");

    /** Greatest count within the limit, least count that is a caution. */
    private record Levels(int limit, int caution, boolean atMost) {}

    private final Instrument instrument;
    private final Map<String, Levels> hookups = new HashMap<>();
    private final Levels unknown;
    /** Counts from which on a curve says nothing. */
    private final long top;

    private final long bottom;
    private Levels levels;

    /** Begins with the hookup that the rig assumes. */
    public Beacon(Instrument instrument, Rig rig, Calibration calibration) {
        this.instrument = instrument;
        top = calibration.topCounts();
        bottom = calibration.bottomCounts();
        for (Hookup hookup : rig.hookups()) {
            hookups.put(hookup.id(), levels(hookup, calibration));
        }
        unknown = levels(rig.lowest(), calibration);
        levels = levels(rig.assumed(), calibration);
    }

    private static Levels levels(Hookup hookup, Calibration calibration) {
        BigDecimal limit = hookup.limit().newtons();
        return new Levels(
                calibration.greatestCountsAtOrBelow(limit),
                calibration.leastCountsAtOrAbove(limit.multiply(CAUTION_SHARE)),
                hookup.limit().isAtMost());
    }

    /** From now on hookup {@code id} is on; one that the rig does not know counts as the one with the lowest limit. */
    public void hookup(String id) {
        levels = hookups.getOrDefault(id, unknown);
    }

    /**
     * The state for a frame of samples, {@link #CLEAR} to {@link #FAULT}; over the limit goes before fault before caution.
     *
     * @param flags as in {@link Evidence#tension}
     */
    public int level(int flags, int[] counts, int from, int n) {
        if ((flags & Evidence.FLAG_OPEN_BRIDGE) != 0) {
            return FAULT;
        }
        int least = Integer.MAX_VALUE;
        int greatest = Integer.MIN_VALUE;
        for (int i = from; i < from + n; i++) {
            least = Math.min(least, counts[i]);
            greatest = Math.max(greatest, counts[i]);
        }
        if (greatest > levels.limit) {
            return OVER_LIMIT;
        }
        boolean endStop = (flags & Evidence.FLAG_END_STOP) != 0
                || instrument.isAtEndStop(least)
                || instrument.isAtEndStop(greatest)
                || greatest >= top
                || least <= bottom;
        if (endStop) {
            return FAULT;
        }
        return greatest >= levels.caution || levels.atMost ? CAUTION : CLEAR;
    }
}
