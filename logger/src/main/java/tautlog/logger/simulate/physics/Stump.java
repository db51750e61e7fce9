package tautlog.logger.simulate.physics;

/**
 * Something stiff in the log's way.
 *
 * @param at distance from the winch along the path at which the butt meets it, m
 * @param hopNewtons push at which the butt rides up and hops over, lasting long enough to lift it; infinite when it
 *     never does
 */
public record Stump(double at, double hopNewtons) {
    /** Wood on wood, butt against stump. Chosen: far stiffer than any line, no source. */
    private static final double STIFFNESS = 1.5e6;

    private static final double DAMPING = 2e4;

    /** A blow shorter than this does not lift a butt. Chosen, no source. */
    static final double LIFT_SECONDS = 0.06;

    /** Push on the log (N), away from the winch, while it is this far into the stump and moving at {@code speed} (m/s, away positive). */
    static double push(double depth, double speed) {
        double push = STIFFNESS * depth - DAMPING * speed;
        return push > 0 ? push : 0;
    }
}
