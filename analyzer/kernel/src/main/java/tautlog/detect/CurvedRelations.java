package tautlog.detect;

import java.math.BigDecimal;
import tautlog.rig.DetectSettings;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Curve;

/**
 * Relations under a curve: each is one sum, difference or product of the doubles that {@link Curve} gives, compared with the
 * double nearest to its threshold.
 *
 * <p>Bounds go by way of the curve's inverse and give {@link #SLACK} counts away, far more than rounding can: counts differ by
 * 5·10⁻¹⁰ of their range at least, doubles of a few steps by 10⁻¹⁵.
 */
final class CurvedRelations implements Relations {
    private static final long SLACK = 2;

    private final Curve curve;
    private final int zeroStretch;
    private final double joltRise;
    private final double cycleGate;
    private final double steady;
    private final double overSpike;
    private final double drift;
    private final double shockFactor;
    private final double dropRest;
    private final long joltMargin;

    CurvedRelations(Calibration calibration, Rig rig, int zeroStretch) {
        DetectSettings set = rig.detect();
        BigDecimal rated = rig.ratedPullNewtons();
        this.zeroStretch = zeroStretch;
        curve = calibration.curve();
        joltRise = set.joltRise().multiply(rated).doubleValue();
        cycleGate = set.cycleGate().multiply(rated).doubleValue();
        steady = rated.multiply(new BigDecimal("0.01")).doubleValue();
        overSpike = rated.multiply(new BigDecimal("0.2")).doubleValue();
        drift = set.driftNewtons().doubleValue();
        shockFactor = set.shockFactor().doubleValue();
        dropRest = BigDecimal.ONE.subtract(set.dropBy()).doubleValue();
        joltMargin = (long) (joltRise / curve.newtonsPerCount() / 4);
    }

    @Override
    public boolean areCurved() {
        return true;
    }

    @Override
    public boolean isJolt(int from, int to) {
        return curve.newtons(to) - curve.newtons(from) >= joltRise;
    }

    @Override
    public long joltsFrom(long from) {
        return (long) Math.floor(curve.counts(curve.newtons((double) from) + joltRise)) - SLACK;
    }

    @Override
    public long joltMargin() {
        return joltMargin;
    }

    @Override
    public boolean isSpike(int peak, int neighbour) {
        return curve.newtons(peak) - curve.newtons(neighbour) > overSpike;
    }

    @Override
    public long spikeFreeFrom(int count) {
        return (long) Math.ceil(curve.counts(curve.newtons(count) - overSpike / 2)) + SLACK;
    }

    @Override
    public long spikeFreeTo(int count) {
        return (long) Math.floor(curve.counts(curve.newtons(count) + overSpike / 2)) - SLACK;
    }

    @Override
    public boolean isDrop(int from, int to) {
        return curve.newtons(to) <= dropRest * curve.newtons(from);
    }

    @Override
    public long dropsTo(int from) {
        return (long) Math.ceil(curve.counts(dropRest * curve.newtons(from))) + SLACK;
    }

    @Override
    public boolean isShockAgainst(int peak, long settledTwice) {
        return curve.newtons(peak) >= shockFactor * curve.newtons(settledTwice / 2.0);
    }

    @Override
    public boolean isSteady(long least, long greatest) {
        return curve.newtons((double) greatest) - curve.newtons((double) least) <= steady;
    }

    @Override
    public boolean isDrift(long sum, SquareSum squares, long otherSum, SquareSum otherSquares) {
        double mean = curve.mean(sum, squares.total(), zeroStretch);
        double other = curve.mean(otherSum, otherSquares.total(), zeroStretch);
        return Math.abs(mean - other) > drift;
    }

    @Override
    public double level(int count) {
        return curve.newtons(count);
    }

    @Override
    public double cycleGate() {
        return cycleGate;
    }
}
