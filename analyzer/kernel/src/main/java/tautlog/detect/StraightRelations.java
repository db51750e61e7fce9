package tautlog.detect;

import java.math.BigDecimal;
import tautlog.rig.DetectSettings;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;

/** Relations under a straight line: differences of counts, exact; products in decimals, exact. */
final class StraightRelations implements Relations {
    private final long joltRise;
    private final long cycleGate;
    /** The greatest differences of counts that are not yet more. */
    private final long steady;

    private final long overSpike;
    /** |sum − sum| over a stretch of zero drift that is not yet more than the drift setting. */
    private final long overDrift;

    private final BigDecimal zero;
    private final BigDecimal shockFactor;
    private final BigDecimal dropRest;
    private final double roundedZero;
    private final double roundedDropRest;

    StraightRelations(Calibration calibration, Rig rig, int zeroStretch) {
        DetectSettings set = rig.detect();
        BigDecimal rated = rig.ratedPullNewtons();
        joltRise = calibration.leastDifference(set.joltRise().multiply(rated));
        cycleGate = calibration.leastDifference(set.cycleGate().multiply(rated));
        steady = calibration.greatestDifference(rated.multiply(new BigDecimal("0.01")));
        overSpike = calibration.greatestDifference(rated.multiply(new BigDecimal("0.2")));
        overDrift = calibration.greatestDifference(set.driftNewtons().multiply(BigDecimal.valueOf(zeroStretch)));
        zero = calibration.zeroCounts();
        shockFactor = set.shockFactor();
        dropRest = BigDecimal.ONE.subtract(set.dropBy());
        roundedZero = zero.doubleValue();
        roundedDropRest = dropRest.doubleValue();
    }

    @Override
    public boolean areCurved() {
        return false;
    }

    @Override
    public boolean isJolt(int from, int to) {
        return (long) to - from >= joltRise;
    }

    @Override
    public long joltsFrom(long from) {
        return from + joltRise;
    }

    @Override
    public long joltMargin() {
        return joltRise / 4;
    }

    @Override
    public boolean isSpike(int peak, int neighbour) {
        return (long) peak - neighbour > overSpike;
    }

    @Override
    public long spikeFreeFrom(int count) {
        return count - overSpike / 2;
    }

    @Override
    public long spikeFreeTo(int count) {
        return count + overSpike / 2;
    }

    @Override
    public boolean isDrop(int from, int to) {
        double apart = to - (roundedZero + (from - roundedZero) * roundedDropRest);
        if (Math.abs(apart) > 2) {
            return apart < 0; // rounding is far less
        }
        BigDecimal rest = dropRest.multiply(BigDecimal.valueOf(from).subtract(zero));
        return BigDecimal.valueOf(to).subtract(zero).compareTo(rest) <= 0;
    }

    @Override
    public long dropsTo(int from) {
        return (long) Math.ceil(roundedZero + (from - roundedZero) * roundedDropRest) + 2;
    }

    /** The calibration's factor cancels. */
    @Override
    public boolean isShockAgainst(int peak, long settledTwice) {
        BigDecimal two = BigDecimal.valueOf(2);
        BigDecimal twicePeak = BigDecimal.valueOf(peak).subtract(zero).multiply(two);
        BigDecimal twiceSettled = BigDecimal.valueOf(settledTwice).subtract(zero.multiply(two));
        return twicePeak.compareTo(shockFactor.multiply(twiceSettled)) >= 0;
    }

    @Override
    public boolean isSteady(long least, long greatest) {
        return greatest - least <= steady;
    }

    @Override
    public boolean isDrift(long sum, SquareSum squares, long otherSum, SquareSum otherSquares) {
        return Math.abs(sum - otherSum) > overDrift;
    }

    @Override
    public double level(int count) {
        return count;
    }

    @Override
    public double cycleGate() {
        return cycleGate;
    }
}
