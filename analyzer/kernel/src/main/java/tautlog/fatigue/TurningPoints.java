package tautlog.fatigue;

/**
 * Finds the reversals of a history, leaving out what moved less than a gate.
 *
 * <p>Source: {@code FINDINGS.md}, Rainflow. The first value is the first point. A reversal is confirmed by the first value that
 * lies the gate or more from the extremum, which is the earliest of equals; until a direction is known, the least and the greatest
 * so far stand for it. {@link #finish} adds the last extremum and the last value where they differ from the point before.
 *
 * <p>Streams, allocates nothing. Not thread-safe.
 */
public final class TurningPoints {
    /** Receives the turning points, oldest first; they rise and fall in turn. */
    @FunctionalInterface
    public interface Points {
        void point(double value, long index);
    }

    private static final int EMPTY = 0;
    private static final int UNDECIDED = 1;
    private static final int UP = 2;
    private static final int DOWN = 3;

    private final double gate;
    private final Points points;
    private int state = EMPTY;
    private double least;
    private long leastIndex;
    private double greatest;
    private long greatestIndex;
    private double lastPoint;
    private double lastValue;
    private long lastIndex;

    /**
     * @param gate above 0, in the unit of the values
     * @throws IllegalArgumentException if {@code gate} is not above 0
     */
    public TurningPoints(double gate, Points points) {
        if (!(gate > 0)) {
            throw new IllegalArgumentException("gate must be above 0, was " + gate);
        }
        this.gate = gate;
        this.points = points;
    }

    /** Takes the next value; {@code index} comes back with its point. */
    public void accept(double value, long index) {
        lastValue = value;
        lastIndex = index;
        switch (state) {
            case UP -> up(value, index);
            case DOWN -> down(value, index);
            case UNDECIDED -> undecided(value, index);
            default -> first(value, index);
        }
    }

    /**
     * Takes many values at once if it is plain from their bounds that they confirm no reversal and begin no history; else takes none
     * and returns false.
     *
     * @param low the least of them, first met at {@code lowIndex}
     * @param high the greatest of them, first met at {@code highIndex}
     * @param last the last of them, at {@code lastIndex}
     */
    public boolean takeAll(double low, long lowIndex, double high, long highIndex, double last, long lastIndex) {
        double bottom = state == UP ? low : Math.min(least, low);
        double top = state == DOWN ? high : Math.max(greatest, high);
        if (state == EMPTY || top - bottom >= gate) {
            return false;
        }
        if (state != UP && low < least) {
            setLeast(low, lowIndex);
        }
        if (state != DOWN && high > greatest) {
            setGreatest(high, highIndex);
        }
        lastValue = last;
        this.lastIndex = lastIndex;
        return true;
    }

    /** Ends the history and gives its last points; the next value begins a new history. */
    public void finish() {
        if (state == UP && greatest != lastPoint) {
            give(greatest, greatestIndex);
        } else if (state == DOWN && least != lastPoint) {
            give(least, leastIndex);
        }
        if (state != EMPTY && lastValue != lastPoint) {
            give(lastValue, lastIndex);
        }
        state = EMPTY;
    }

    /** Forgets the history. */
    public void clear() {
        state = EMPTY;
    }

    /** Takes over the state of {@code other}, but neither its gate nor its receiver. */
    public void copyFrom(TurningPoints other) {
        state = other.state;
        least = other.least;
        leastIndex = other.leastIndex;
        greatest = other.greatest;
        greatestIndex = other.greatestIndex;
        lastPoint = other.lastPoint;
        lastValue = other.lastValue;
        lastIndex = other.lastIndex;
    }

    private void first(double value, long index) {
        setLeast(value, index);
        setGreatest(value, index);
        state = UNDECIDED;
        give(value, index);
    }

    private void undecided(double value, long index) {
        // the last point is the first value; the earliest of equals being meant, an equal extremum is that value itself
        if (value - least >= gate) {
            if (least != lastPoint) {
                give(least, leastIndex);
            }
            setGreatest(value, index);
            state = UP;
        } else if (greatest - value >= gate) {
            if (greatest != lastPoint) {
                give(greatest, greatestIndex);
            }
            setLeast(value, index);
            state = DOWN;
        } else if (value < least) {
            setLeast(value, index);
        } else if (value > greatest) {
            setGreatest(value, index);
        }
    }

    private void up(double value, long index) {
        if (value > greatest) {
            setGreatest(value, index);
        } else if (greatest - value >= gate) {
            give(greatest, greatestIndex);
            setLeast(value, index);
            state = DOWN;
        }
    }

    private void down(double value, long index) {
        if (value < least) {
            setLeast(value, index);
        } else if (value - least >= gate) {
            give(least, leastIndex);
            setGreatest(value, index);
            state = UP;
        }
    }

    private void give(double value, long index) {
        lastPoint = value;
        points.point(value, index);
    }

    private void setLeast(double value, long index) {
        least = value;
        leastIndex = index;
    }

    private void setGreatest(double value, long index) {
        greatest = value;
        greatestIndex = index;
    }
}
