package tautlog.detect;

import java.math.BigDecimal;
import tautlog.rig.Hookup;
import tautlog.sample.Calibration;

/**
 * A hookup's limit, turned into counts once: T > L ⟺ c > {@code limit}, and likewise for the parts of it.
 *
 * <p>Made once per hookup; compared by identity in the hot path.
 */
final class HookupLimits {
    private static final BigDecimal QUARTER = new BigDecimal("0.25");

    final String id;
    final boolean assumed;
    final boolean atMost;
    /** Greatest count with T ≤ L. */
    final int limit;
    /** Greatest count with T ≤ overload_clear · L. */
    final int clear;
    /** Greatest counts with share ≤ 0.25, 0.5, 0.75, 1. */
    final int[] bands;

    /** The calibration is a curve: sums of squares are kept. */
    final boolean curved;

    private final Calibration calibration;
    private final BigDecimal newtons;
    private final double limitNewtons;

    HookupLimits(Hookup hookup, boolean assumed, BigDecimal overloadClear, Calibration calibration) {
        this.id = hookup.id();
        this.assumed = assumed;
        this.calibration = calibration;
        this.curved = !calibration.isStraight();
        this.newtons = hookup.limit().newtons();
        this.limitNewtons = newtons.doubleValue();
        this.atMost = hookup.limit().isAtMost();
        this.limit = calibration.greatestCountsAtOrBelow(newtons);
        this.clear = calibration.greatestCountsAtOrBelow(newtons.multiply(overloadClear));
        this.bands = new int[4];
        for (int i = 0; i < bands.length; i++) {
            bands[i] = calibration.greatestCountsAtOrBelow(
                    newtons.multiply(QUARTER).multiply(BigDecimal.valueOf(i + 1)));
        }
    }

    boolean isSameHookup(HookupLimits other) {
        return this == other || id.equals(other.id);
    }

    /** 0 for a share up to 0.25 … 4 for one above 1. */
    int band(int counts) {
        int band = 0;
        while (band < bands.length && counts > bands[band]) {
            band++;
        }
        return band;
    }

    /** T / L, to rounding. */
    double share(int counts) {
        return calibration.newtons(counts) / limitNewtons;
    }

    /** True when {@code counts} under this hookup is a greater share than {@code theirs} under {@code other}; exact for a straight line, by the doubles for a curve. */
    boolean isGreaterShare(int counts, HookupLimits other, int theirs) {
        if (this == other) {
            return counts > theirs;
        }
        double mine = share(counts);
        double yours = other.share(theirs);
        if (curved) {
            return mine > yours;
        }
        if (Math.abs(mine - yours) > 1e-6 * (1 + Math.abs(mine) + Math.abs(yours))) {
            return mine > yours;
        }
        BigDecimal left = calibration.exactNewtons(counts).multiply(other.newtons);
        return left.compareTo(calibration.exactNewtons(theirs).multiply(newtons)) > 0;
    }
}
