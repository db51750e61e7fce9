package tautlog.fatigue;

import java.util.Arrays;

/**
 * Splits a load history into full and half cycles, point by point.
 *
 * <p>Source: ASTM E1049-85, 5.4.4 (the history does not repeat). X is the latest range, Y the one before it. While X ≥ Y: Y is
 * half a cycle and its first point is dropped when it holds the first point that is left; else a full cycle and both its points
 * are dropped. What is left at the end is half cycles. Exact for whole numbers up to 2⁵².
 *
 * <p>The points that are left have ranges that fall strictly, so the stack is no deeper than a history has distinct ranges; it
 * grows when needed and is kept for the next history. Not thread-safe.
 */
public final class Rainflow implements TurningPoints.Points {
    private static final int FIRST_CAPACITY = 64;

    private final Cycles cycles;
    private double[] values = new double[FIRST_CAPACITY];
    private long[] indices = new long[FIRST_CAPACITY];
    private int size;

    public Rainflow(Cycles cycles) {
        this.cycles = cycles;
    }

    /**
     * Counts the cycles of a whole history, including points that are no reversals.
     *
     * @param history oldest first; not modified; indices of the cycles are positions in it
     */
    public static void count(double[] history, Cycles cycles) {
        Rainflow rainflow = new Rainflow(cycles);
        TurningPoints points = new TurningPoints(Double.MIN_VALUE, rainflow);
        for (int i = 0; i < history.length; i++) {
            points.accept(history[i], i);
        }
        points.finish();
        rainflow.finish();
    }

    /** Takes the next turning point; points must alternate between rising and falling. */
    @Override
    public void point(double value, long index) {
        push(value, index);
        while (size >= 3 && latest() >= before()) {
            if (size == 3) {
                emit(0, 1);
                drop(0, 1);
            } else {
                emit(size - 3, 2);
                drop(size - 3, 2);
            }
        }
    }

    /** Ends the history: what is left becomes half cycles, and the next point begins a new history. */
    public void finish() {
        for (int i = 0; i + 1 < size; i++) {
            emit(i, 1);
        }
        size = 0;
    }

    /** Forgets the history without counting what is left. */
    public void clear() {
        size = 0;
    }

    /** Takes over the state of {@code other}, but not its receiver. */
    public void copyFrom(Rainflow other) {
        if (values.length < other.size) {
            values = new double[other.values.length];
            indices = new long[other.values.length];
        }
        System.arraycopy(other.values, 0, values, 0, other.size);
        System.arraycopy(other.indices, 0, indices, 0, other.size);
        size = other.size;
    }

    /** How many points are left: for tests of how deep the stack grows. */
    int depth() {
        return size;
    }

    private double latest() {
        return Math.abs(values[size - 1] - values[size - 2]);
    }

    private double before() {
        return Math.abs(values[size - 2] - values[size - 3]);
    }

    private void emit(int first, int halves) {
        cycles.cycle(values[first], values[first + 1], indices[first], indices[first + 1], halves);
    }

    private void drop(int first, int points) {
        int rest = size - first - points;
        System.arraycopy(values, first + points, values, first, rest);
        System.arraycopy(indices, first + points, indices, first, rest);
        size -= points;
    }

    private void push(double value, long index) {
        if (size == values.length) {
            values = Arrays.copyOf(values, 2 * size);
            indices = Arrays.copyOf(indices, 2 * size);
        }
        values[size] = value;
        indices[size++] = index;
    }
}
