package tautlog.rig;

import java.math.BigDecimal;
import java.util.Optional;
import tautlog.quantity.Angle;

/**
 * The load cell: where it sits, what it may carry.
 *
 * @param capacityNewtons its own rating, above 0; empty when the rig does not say
 * @param betweenLines angle between the two lines whose sum it carries; empty at {@code line} and {@code dead-end}
 * @param betweenLinesPlusMinus how far that angle may be off
 */
public record Cell(
        CellPlace at,
        Optional<BigDecimal> capacityNewtons,
        Optional<Angle> betweenLines,
        Optional<Angle> betweenLinesPlusMinus) {

    /**
     * The cell's reading / the line's tension: 1, or 2 cos(a/2). T = F / this; divide a calibration's newtons per count by
     * it to get the line's tension.
     */
    public BigDecimal readingPerTension() {
        return betweenLines.map(BlockFactor::of).orElse(BigDecimal.ONE);
    }

    /** The line's tension at which the cell reaches its own rating. */
    public Optional<BigDecimal> tensionAtCapacity() {
        return capacityNewtons.map(capacity -> LoadedItem.quotient(capacity, readingPerTension()));
    }

    /**
     * How far the tension may be off because of the angle, as a fraction of it: the greater deviation at the two ends of the
     * angle's interval. 0 when no interval is written or no angle enters.
     */
    public double angleUncertainty() {
        return Math.max(Math.abs(leastTensionFactor() - 1), Math.abs(greatestTensionFactor() - 1));
    }

    /** An angle enters, and nobody wrote how far it may be off. */
    public boolean isAngleUnbounded() {
        return betweenLines.isPresent() && betweenLinesPlusMinus.isEmpty();
    }

    /** True tension / the one worked out, when the angle is as narrow as its interval lets it be; 1 when there is none. */
    public double leastTensionFactor() {
        return tensionFactor(0);
    }

    /** True tension / the one worked out, when the angle is as wide as its interval lets it be; 1 when there is none. */
    public double greatestTensionFactor() {
        return tensionFactor(1);
    }

    /**
     * True tension / the one worked out, somewhere in the angle's interval; 1 when there is none.
     *
     * @param share of the interval from its narrow end: 0 to 1
     */
    public double tensionFactor(double share) {
        if (betweenLines.isEmpty() || betweenLinesPlusMinus.isEmpty()) {
            return 1;
        }
        double angle = betweenLines.get().degrees().doubleValue();
        double off = betweenLinesPlusMinus.get().degrees().doubleValue();
        double narrowest = Math.max(0, angle - off);
        double trueAngle = narrowest + share * (Math.min(180, angle + off) - narrowest);
        return Math.cos(Math.toRadians(angle / 2)) / Math.cos(Math.toRadians(trueAngle / 2));
    }
}
