package tautlog.logger.simulate.physics;

/** Dry friction in one step: an impulse that opposes motion and at most stops it. */
final class Friction {
    private Friction() {}

    /**
     * What is left of a momentum.
     *
     * @param momentum before friction; kg·m/s, or kg·m²/s for a rotation
     * @param limit the greatest impulse that friction can give in this step, 0 or more, same unit
     */
    static double leftOf(double momentum, double limit) {
        if (momentum > limit) {
            return momentum - limit;
        }
        if (momentum < -limit) {
            return momentum + limit;
        }
        return 0;
    }
}
