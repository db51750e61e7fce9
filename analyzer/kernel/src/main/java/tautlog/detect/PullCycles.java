package tautlog.detect;

import java.util.Arrays;
import tautlog.fatigue.Rainflow;
import tautlog.fatigue.TurningPoints;
import tautlog.sample.CountBounds;

/**
 * Counts the rainflow cycles of one pull after the other. Source: {@code FINDINGS.md}, Rainflow.
 *
 * <p>The history ends at the pull's end, which is known only afterwards: {@link #mark} remembers the state there, {@link #keep}
 * goes on past it, {@link #finish} goes back to it. Cycles are told when they can no longer be taken back. The points' indices are
 * their counts.
 */
final class PullCycles {
    private static final int FIRST_CAPACITY = 32;
    /** So few samples are looked at one by one. */
    private static final int FEW = 16;

    private final Relations relations;
    private final FindingSink sink;
    private final Rainflow rainflow = new Rainflow(this::hold);
    private final TurningPoints points;
    private final Rainflow rainflowAtEnd = new Rainflow(this::hold);
    private final TurningPoints pointsAtEnd;
    private final CountBounds bounds = new CountBounds();
    private long[] from = new long[FIRST_CAPACITY];
    private long[] to = new long[FIRST_CAPACITY];
    private int[] halves = new int[FIRST_CAPACITY];
    private int held;
    private int heldAtEnd;
    private boolean marked;
    private boolean confirmed;

    PullCycles(Relations relations, FindingSink sink) {
        this.relations = relations;
        this.sink = sink;
        points = new TurningPoints(relations.cycleGate(), rainflow);
        pointsAtEnd = new TurningPoints(relations.cycleGate(), rainflowAtEnd);
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
        if (takesAll(run.least, run.greatest, run.lastCount())) {
            return;
        }
        parts(run.open(), run.at(), run.n);
    }

    /** Halves what does not pass as a whole: a steady rise passes in parts. */
    private void parts(int[] counts, int from, int n) {
        if (n > FEW) {
            some(counts, from, n / 2);
            some(counts, from + n / 2, n - n / 2);
            return;
        }
        for (int i = from; i < from + n; i++) {
            sample(counts[i]);
        }
    }

    private void some(int[] counts, int from, int n) {
        bounds.measure(counts, from, n);
        if (!takesAll(bounds.least(), bounds.greatest(), counts[from + n - 1])) {
            parts(counts, from, n);
        }
    }

    private boolean takesAll(int least, int greatest, int last) {
        return points.takeAll(
                relations.level(least), least, relations.level(greatest), greatest, relations.level(last), last);
    }

    void sample(int count) {
        points.accept(relations.level(count), count);
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

    private void hold(double first, double second, long firstCount, long secondCount, int howMany) {
        if (held == from.length) {
            from = Arrays.copyOf(from, 2 * held);
            to = Arrays.copyOf(to, 2 * held);
            halves = Arrays.copyOf(halves, 2 * held);
        }
        from[held] = firstCount;
        to[held] = secondCount;
        halves[held++] = howMany;
    }

    private void tell(int howMany) {
        for (int i = 0; i < howMany; i++) {
            sink.cycle(Math.abs(to[i] - from[i]), from[i] + to[i], halves[i]);
        }
        held = 0;
    }
}
