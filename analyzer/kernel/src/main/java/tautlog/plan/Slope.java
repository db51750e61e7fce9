package tautlog.plan;

/**
 * How steep the ground is in the direction of the pull.
 *
 * @param degrees from the horizontal, above 0 when the log is pulled uphill; -60 to 60
 * @param isAssumed nobody said: taken as level
 */
public record Slope(Interval degrees, boolean isAssumed) {
    static final Slope ASSUMED = new Slope(new Interval(0, 0), true);
    /** Chosen: what is steeper is a cliff, and no log is dragged there. */
    static final double STEEPEST_DEGREES = 60;

    /** @throws IllegalArgumentException if an end is steeper than 60 degrees */
    public Slope {
        if (degrees.low() < -STEEPEST_DEGREES || degrees.high() > STEEPEST_DEGREES) {
            throw new IllegalArgumentException("a slope is from -60 to 60 degrees, was " + degrees);
        }
    }
}
