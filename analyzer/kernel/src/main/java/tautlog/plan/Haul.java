package tautlog.plan;

import java.util.stream.DoubleStream;

/** A log to be dragged over some ground, up or down a slope, at a steady crawl and with nothing in its way. */
public record Haul(GreenLog log, Friction friction, Slope slope) {
    /**
     * The pull along the slope that keeps the log moving, in newtons: W (μ cos α + sin α) over every weight, friction and
     * slope of their intervals. Below 0: the log must be held back.
     */
    public Interval pullNewtons() {
        Interval weight = log.weightNewtons();
        double least = leastPullPerWeight();
        double greatest = greatestPullPerWeight();
        return new Interval(
                least * (least < 0 ? weight.high() : weight.low()),
                greatest * (greatest < 0 ? weight.low() : weight.high()));
    }

    /** The log may slide by itself: the pull is not above 0 everywhere in its interval. */
    public boolean mayRun() {
        return leastPullPerWeight() <= 0;
    }

    /** The log slides by itself whatever the friction: the pull is above 0 nowhere in its interval. */
    public boolean runs() {
        return greatestPullPerWeight() <= 0;
    }

    /** As a function of the slope it has no valley in between: an end is the least. */
    private double leastPullPerWeight() {
        double low = friction.coefficient().low();
        return Math.min(
                pullPerWeight(low, slope.degrees().low()),
                pullPerWeight(low, slope.degrees().high()));
    }

    /** At an end, or at the top of the curve, where tan α = 1 / μ. */
    private double greatestPullPerWeight() {
        double high = friction.coefficient().high();
        double top = Math.toDegrees(Math.atan(1 / high));
        return DoubleStream.of(slope.degrees().low(), slope.degrees().high(), top)
                .filter(slope.degrees()::contains)
                .map(degrees -> pullPerWeight(high, degrees))
                .max()
                .orElseThrow();
    }

    /** μ cos α + sin α: statics. */
    static double pullPerWeight(double friction, double slopeDegrees) {
        double slope = Math.toRadians(slopeDegrees);
        return friction * Math.cos(slope) + Math.sin(slope);
    }
}
