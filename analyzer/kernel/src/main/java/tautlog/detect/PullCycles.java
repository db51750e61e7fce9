package tautlog.detect;

import java.util.Arrays;
import tautlog.fatigue.Rainflow;
import tautlog.fatigue.TurningPoints;

/**
 * Counts the rainflow cycles of one pull after the other. Source: {@code FINDINGS.md}, Rainflow.
 *
 * <p>The history ends at the pull's end, which is known only afterwards: {@link #mark} remembers the state there, {@link #keep}
 * goes on past it, {@link #finish} goes back to it. Cycles are told when they can no longer be taken back.
 */
final class PullCycles {
    private static final int FIRST_CAPACITY = 32;
    /** A tension that rises steadily moves by more than the gate in a run, but not in a piece of so many samples. */
    private static final int PIECE = 16;

    private final FindingSink sink;
    private final Rainflow rainflow = new Rainflow(this::hold);
    private final TurningPoints points;
    private final Rainflow rainflowAtEnd = new Rainflow(this::hold);
    private final TurningPoints pointsAtEnd;
    private double[] from = new double[FIRST_CAPACITY];
    private double[] to = new double[FIRST_CAPACITY];
    private int[] halves = new int[FIRST_CAPACITY];
    private int held;
    private int heldAtEnd;
    private boolean marked;
    private boolean confirmed;

    PullCycles(long gate, FindingSink sink) {
        this.sink = sink;
        points = new TurningPoints(gate, rainflow);
        pointsAtEnd = new TurningPoints(gate, rainflowAtEnd);
    }

    /** A pull may begin with the next sample. */
    void begin() {
        points.clear();
        rainflow.clear();
        held = 0;
        marked = false;
        confirmed = false;
    }

    /** What began is a pull. */
    void confirm() {
        confirmed = true;
        tell(held);
    }

    void run(Run run) {
        if (points.takeAll(run.least, 0, run.greatest, 0, run.lastCount(), 0)) {
            return;
        }
        for (int k = 0; k < run.n; k += PIECE) {
            piece(run, k, Math.min(run.n, k + PIECE));
        }
    }

    private void piece(Run run, int from, int end) {
        int low = Integer.MAX_VALUE;
        int high = Integer.MIN_VALUE;
        for (int k = from; k < end; k++) {
            low = Math.min(low, run.count(k));
            high = Math.max(high, run.count(k));
        }
        if (points.takeAll(low, 0, high, 0, run.count(end - 1), 0)) {
            return;
        }
        for (int k = from; k < end; k++) {
            points.accept(run.count(k), 0);
        }
    }

    void sample(int count) {
        points.accept(count, 0);
    }

    /** The samples since the last {@link #keep} end the pull, unless {@link #keep} comes again. */
    void mark() {
        if (!marked) {
            marked = true;
            pointsAtEnd.copyFrom(points);
            rainflowAtEnd.copyFrom(rainflow);
            heldAtEnd = held;
        }
    }

    /** The pull goes on: what came since {@link #mark} belongs to it. */
    void keep() {
        marked = false;
        if (confirmed && held > 0) {
            tell(held);
        }
    }

    /** The pull ended where {@link #mark} was called first since {@link #keep}, or at the latest sample. */
    void finish() {
        mark();
        held = heldAtEnd;
        pointsAtEnd.finish();
        rainflowAtEnd.finish();
        tell(held);
    }

    private void hold(double first, double second, long firstIndex, long secondIndex, int howMany) {
        if (held == from.length) {
            from = Arrays.copyOf(from, 2 * held);
            to = Arrays.copyOf(to, 2 * held);
            halves = Arrays.copyOf(halves, 2 * held);
        }
        from[held] = first;
        to[held] = second;
        halves[held++] = howMany;
    }

    private void tell(int howMany) {
        for (int i = 0; i < howMany; i++) {
            sink.cycle((long) Math.abs(to[i] - from[i]), (long) (from[i] + to[i]), halves[i]);
        }
        held = 0;
    }
}
