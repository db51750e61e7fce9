package tautlog.desk.uncertainty;

import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * How far below the greatest of noisy readings the true greatest may lie.
 *
 * <p>The greatest reading is off by noise that lifts it ({@link NoiseAtTop}) and by what all readings share: a normal part and a rectangle. The
 * sum's distribution is the mean of the shared one's over equally probable lifts. The upper end stands where it does for a single reading,
 * which is right when one reading stands out and never too low; the lower end is where both ends together hold {@link Interval#COVERAGE}.
 */
final class BelowPeak {
    private static final NormalDistribution NORMAL = new NormalDistribution();
    private static final int FEWEST_LIFTS = 30;
    /** One is half a percent: where noise is all, the probability rises in such steps. */
    private static final int MOST_LIFTS = 200;

    private static final double NONE = 1e-9;
    /** So many standard deviations are all of a normal distribution. */
    private static final int ALL = 7;

    private final double[] lifts;
    private final double normal;
    private final double rectangle;

    /**
     * In newtons.
     *
     * @param noise standard deviation of a reading
     * @param normal standard deviation of what is shared; of Student's t that of the normal distribution with the same 95 %
     * @param rectangle half the width of the shared rectangle
     */
    BelowPeak(NoiseAtTop top, double noise, double normal, double rectangle) {
        this.normal = normal;
        this.rectangle = rectangle;
        // the wider what is shared, the less matters how finely the lifts are told apart
        double lifted = MOST_LIFTS * noise / (normal + rectangle);
        lifts = new double[(int) Math.max(FEWEST_LIFTS, Math.min(MOST_LIFTS, lifted))];
        for (int i = 0; i < lifts.length; i++) {
            lifts[i] = noise * top.quantile((i + 0.5) / lifts.length);
        }
    }

    /** @param above how far the interval reaches above the reading */
    double width(double above) {
        double held = Math.min(1 - NONE, Interval.COVERAGE + atMost(-above));
        double most = Math.max(0, lifts[lifts.length - 1]) + rectangle + ALL * normal;
        return new Crossing(newtons -> atMost(newtons) - held).between(0, most);
    }

    /** Probability that reading − truth is at most {@code newtons}. */
    private double atMost(double newtons) {
        double sum = 0;
        for (double lift : lifts) {
            sum += shared(newtons - lift);
        }
        return sum / lifts.length;
    }

    /** Distribution function of normal + rectangle; exact. */
    private double shared(double newtons) {
        double all = rectangle + ALL * normal;
        if (Math.abs(newtons) >= all) {
            return newtons > 0 ? 1 : 0;
        }
        if (rectangle <= NONE * normal) {
            return NORMAL.cumulativeProbability(newtons / normal);
        }
        if (normal <= NONE * rectangle) {
            return (newtons + rectangle) / (2 * rectangle);
        }
        return normal
                / (2 * rectangle)
                * (integral((newtons + rectangle) / normal) - integral((newtons - rectangle) / normal));
    }

    /** ∫ Φ(x) dx. */
    private static double integral(double x) {
        return x * NORMAL.cumulativeProbability(x) + NORMAL.density(x);
    }
}
