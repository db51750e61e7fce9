package tautlog.desk.uncertainty;

import java.util.List;
import tautlog.rig.Cell;

/**
 * What the angle at the cell makes of a tension, to each side of the one that was worked out.
 *
 * <p>Equally likely is the angle, not the tension: between nearly parallel lines the tension hardly changes with it, between wide ones fast. So
 * each end has its own reach, which alone ends where {@link Interval#COVERAGE} of the angles do. Where the tension hardly changes, many
 * angles crowd at the end of what is possible: that end is the more of a bound, the more they do, and a rectangle where they do not.
 */
record AngleDoubt(Reach below, Reach above) {
    static final AngleDoubt NONE = new AngleDoubt(Reach.of(0, 0), Reach.of(0, 0));
    private static final double CUT = (1 - Interval.COVERAGE) / 2;

    /** One end of an interval. */
    enum End {
        LOW,
        HIGH
    }

    /**
     * As fractions of the tension, 0 or more.
     *
     * @param bound added whole
     * @param rectangle half its width
     */
    record Reach(double bound, double rectangle) {
        /**
         * @param whole as far as the angle's interval goes
         * @param likely as far as its {@link Interval#COVERAGE} goes: bound + coverage · rectangle
         */
        static Reach of(double whole, double likely) {
            double far = Math.max(0, whole);
            double near = Math.max(0, likely);
            double rectangle = Math.min((far - near) / (1 - Interval.COVERAGE), near / Interval.COVERAGE);
            return new Reach(Math.max(0, near - Interval.COVERAGE * rectangle), rectangle);
        }
    }

    static AngleDoubt of(Cell cell) {
        return new AngleDoubt(
                Reach.of(1 - cell.tensionFactor(0), 1 - cell.tensionFactor(CUT)),
                Reach.of(cell.tensionFactor(1) - 1, cell.tensionFactor(1 - CUT) - 1));
    }

    /** For one end of a tension's interval, or of a difference's. */
    List<Part> parts(double tension, End end) {
        boolean isShrunk = end == End.LOW == tension >= 0;
        Reach reach = isShrunk ? below : above;
        return List.of(
                Part.bound(Cause.CELL_ANGLE, Math.abs(tension) * reach.bound()),
                Part.rectangle(Cause.CELL_ANGLE, Math.abs(tension) * reach.rectangle()));
    }
}
