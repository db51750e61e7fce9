package tautlog.desk.uncertainty;

import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * How far the greatest of some equally noisy readings of one height lies above that height, in standard deviations of the noise.
 *
 * <p>The greatest of m has the distribution Φ^m (order statistics of independent normal readings).
 */
final class NoiseAtTop {
    private static final NormalDistribution NORMAL = new NormalDistribution();

    private final double readings;

    /** @param readings m, 1 or more */
    NoiseAtTop(double readings) {
        this.readings = readings;
    }

    /** Where it stays below with {@code probability}; 0 to 1, both left out. */
    double quantile(double probability) {
        // 1 − p^(1/m) is formed directly: near 1 nothing would be left of it
        return -NORMAL.inverseCumulativeProbability(-Math.expm1(Math.log(probability) / readings));
    }

    /**
     * How many readings were about as high as the greatest true value, at most: if that lay as far down as these many allow, half of them would
     * have been read above it. So the level is looked for at which twice the readings above it (the greatest counts once) explain the distance.
     *
     * @param above how many readings lie less than (i + 1) / {@code stepsInSd} standard deviations below the greatest, itself included
     * @param all readings there were; the answer when nothing lower explains it
     */
    static double asHigh(long[] above, double stepsInSd, long all) {
        for (int i = 0; i < above.length; i++) {
            double m = Math.min((double) all, 2.0 * Math.max(1, above[i]) - 1);
            if ((i + 1) / stepsInSd >= new NoiseAtTop(m).quantile(Interval.COVERAGE)) {
                return m;
            }
        }
        return Math.max(1.0, (double) all);
    }
}
