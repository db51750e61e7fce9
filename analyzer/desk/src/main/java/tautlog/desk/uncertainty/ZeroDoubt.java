package tautlog.desk.uncertainty;

/**
 * How far the zero of an outing may be off, in newtons of tension.
 *
 * @param boundNewtons so far, perhaps always: what was taken off, where it drifted to, or a setting
 * @param wanderNewtons half the width of a rectangle: anywhere within, another place at every pull
 */
record ZeroDoubt(double boundNewtons, double wanderNewtons) {
    /** By a setting alone. */
    static ZeroDoubt within(double newtons) {
        return new ZeroDoubt(newtons, 0);
    }

    /**
     * As slack saw it. Of n places equally likely within unknown bounds, one more lies beyond c times the farthest (c ≥ 1) with
     * c⁻ⁿ/(n + 1); c is chosen for 5 %, and (n + 1)/n at least, where the bounds themselves are to be expected.
     */
    static ZeroDoubt seen(int stretches, double boundNewtons, double farthestNewtons) {
        double n = stretches;
        double beyond = Math.max((n + 1) / n, Math.pow((1 - Interval.COVERAGE) * (n + 1), -1 / n));
        return new ZeroDoubt(boundNewtons, beyond * farthestNewtons / Interval.COVERAGE);
    }

    /** This, or a setting where that is more. */
    ZeroDoubt atLeast(double newtons) {
        return boundNewtons + Interval.COVERAGE * wanderNewtons >= newtons ? this : within(newtons);
    }
}
