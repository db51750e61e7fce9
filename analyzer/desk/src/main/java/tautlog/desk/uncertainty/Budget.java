package tautlog.desk.uncertainty;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;

/**
 * Adds the parts of a figure's doubt up to half the width of an interval.
 *
 * <p>Normal parts, and all rectangles but the largest, are combined as squares and scaled as Student's t for the effective degrees
 * of freedom (Welch and Satterthwaite; JCGM 100:2008, G.4). The largest rectangle is added to that as the rectangle that it
 * is: the sum's distribution is known in closed form, and the half width is where it holds {@link Interval#COVERAGE}. So the interval
 * is neither too wide when a rectangle is most of it nor too narrow when it is not. Bounds are added whole: the interval then holds the
 * truth wherever within them it lies.
 */
final class Budget {
    /** Beyond it Student's t is the normal distribution to all digits shown. */
    private static final double MANY = 1e6;
    /** Student's t has a mean above 1 only; a fit with one degree of freedom is taken to have a little more. */
    private static final double FEWEST = 1.01;

    private static final double NORMAL_QUANTILE =
            new NormalDistribution().inverseCumulativeProbability((1 + Interval.COVERAGE) / 2);

    private final List<Part> parts;
    private final double freedom;
    private final double estimatedVariance;

    /**
     * @param freedom degrees of freedom of what was estimated from the calibration's readings, 1 or more
     * @param estimatedNewtons the standard deviation that was; one of the normal parts
     */
    Budget(List<Part> parts, double freedom, double estimatedNewtons) {
        this.parts = List.copyOf(parts);
        this.freedom = freedom;
        estimatedVariance = estimatedNewtons * estimatedNewtons;
    }

    /**
     * How far the interval reaches below a reading that is the greatest of some, in newtons.
     *
     * @param top how noise lifts it
     * @param above how far it reaches above
     */
    double below(NoiseAtTop top, double above) {
        double noise = parts.stream()
                .filter(part -> part.cause() == Cause.NOISE)
                .mapToDouble(Part::newtons)
                .sum();
        double rectangle = rectangle();
        double shared = Math.max(0, variance() - noise * noise);
        double normal = shared == 0 ? 0 : quantile(shared) / NORMAL_QUANTILE * Math.sqrt(shared);
        return bounds() + new BelowPeak(top, noise, normal, rectangle).width(above - bounds());
    }

    /** Half the width of the interval, in newtons. */
    double halfWidth() {
        return bounds() + byChance();
    }

    private double bounds() {
        return parts.stream()
                .filter(part -> part.shape() == Part.Shape.BOUND)
                .mapToDouble(Part::newtons)
                .sum();
    }

    private double byChance() {
        double rectangle = rectangle();
        double variance = variance();
        double rest = Math.sqrt(variance);
        if (rest <= 1e-9 * rectangle) {
            return Interval.COVERAGE * rectangle;
        }
        TDistribution t = new TDistribution(effectiveFreedom(variance));
        double alone = quantile(variance) * rest;
        return rectangle <= 1e-9 * rest ? alone : solve(t, rest, rectangle, alone);
    }

    private double rectangle() {
        return largestRectangle().map(Part::newtons).orElse(0.0);
    }

    /** Of all but the largest rectangle. */
    private double variance() {
        double rectangle = rectangle();
        return Math.max(0, parts.stream().mapToDouble(Part::variance).sum() - rectangle * rectangle / 3);
    }

    private double quantile(double variance) {
        return new TDistribution(effectiveFreedom(variance)).inverseCumulativeProbability((1 + Interval.COVERAGE) / 2);
    }

    private double effectiveFreedom(double variance) {
        double share = estimatedVariance / variance;
        return share * share * MANY <= freedom ? MANY : Math.max(FEWEST, freedom / (share * share));
    }

    private static double solve(TDistribution t, double rest, double rectangle, double alone) {
        return new Crossing(width -> inside(t, rest, rectangle, width) - Interval.COVERAGE)
                .between(Math.max(0, Interval.COVERAGE * rectangle - alone), rectangle + alone);
    }

    /** P(|rest · t + rectangle · u| ≤ width), u equally likely from −1 to 1. */
    private static double inside(TDistribution t, double rest, double rectangle, double width) {
        double upper = integral(t, (width + rectangle) / rest);
        double lower = integral(t, (width - rectangle) / rest);
        return rest / rectangle * (upper - lower) - 1;
    }

    /** ∫ F(x) dx, F the distribution function of Student's t; exact. */
    private static double integral(TDistribution t, double x) {
        double nu = t.getDegreesOfFreedom();
        return x * t.cumulativeProbability(x) + (nu + x * x) / (nu - 1) * t.density(x);
    }

    private Optional<Part> largestRectangle() {
        return parts.stream()
                .filter(part -> part.shape() == Part.Shape.RECTANGLE)
                .max(Comparator.comparingDouble(Part::newtons));
    }

    /** The part that alone would make the widest interval; empty when all are 0. */
    Optional<Cause> largest() {
        return parts.stream()
                .filter(part -> part.newtons() > 0)
                .max(Comparator.comparingDouble(Part::alone))
                .map(Part::cause);
    }
}
