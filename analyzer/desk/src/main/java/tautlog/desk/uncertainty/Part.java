package tautlog.desk.uncertainty;

/**
 * One contribution to the doubt in a figure, in newtons of it.
 *
 * @param newtons the standard deviation of a {@link Shape#NORMAL} part, half the width of a {@link Shape#RECTANGLE} or {@link Shape#BOUND}; 0 or
 *     above
 */
record Part(Cause cause, Shape shape, double newtons) {
    private static final double COVERED_BY_NORMAL = 1.959963984540054; // 97.5 % point of the normal distribution
    private static final double COVERED_BY_RECTANGLE = Interval.COVERAGE;

    /** Distribution of a part. */
    enum Shape {
        NORMAL,
        /** Equally likely anywhere between two bounds. */
        RECTANGLE,
        /** Perhaps all of it, and always: it is added to the width whole. */
        BOUND
    }

    /** @throws IllegalArgumentException if {@code newtons} is below 0 or not finite */
    Part {
        if (!(newtons >= 0) || Double.isInfinite(newtons)) {
            throw new IllegalArgumentException("newtons must be 0 or above and finite, was " + newtons);
        }
    }

    static Part normal(Cause cause, double standardNewtons) {
        return new Part(cause, Shape.NORMAL, standardNewtons);
    }

    static Part rectangle(Cause cause, double halfWidthNewtons) {
        return new Part(cause, Shape.RECTANGLE, halfWidthNewtons);
    }

    static Part bound(Cause cause, double newtons) {
        return new Part(cause, Shape.BOUND, newtons);
    }

    /** 0 for a bound, which is no matter of chance. */
    double variance() {
        if (shape == Shape.BOUND) {
            return 0;
        }
        return shape == Shape.NORMAL ? newtons * newtons : newtons * newtons / 3;
    }

    /** Half the interval that it would make alone. */
    double alone() {
        if (shape == Shape.BOUND) {
            return newtons;
        }
        return newtons * (shape == Shape.NORMAL ? COVERED_BY_NORMAL : COVERED_BY_RECTANGLE);
    }
}
