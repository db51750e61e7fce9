package tautlog.detect;

import java.util.ArrayDeque;
import java.util.Deque;
import tautlog.sample.Instrument;

/**
 * Makes the one-second summaries. Source: {@code FINDINGS.md}, Seconds. Runs come cut at the seconds' bounds.
 *
 * <p>A second is told when a sample of a later one is there and the shaft's readings for it are known.
 */
final class SecondsMaker implements Detector {
    private final Deque<SecondSoFar> seconds = new ArrayDeque<>();
    private final FindingSink sink;
    private final boolean isWanted;
    private final long rateMillihertz;
    private final int fullScale;
    private boolean began;
    private long first;
    private long index;
    private long indexFirst;
    private long nextFirst;
    private long lastNumber;
    private long lastFlagged = Long.MIN_VALUE;
    private boolean ended;

    SecondsMaker(Instrument instrument, FindingSink sink) {
        this.sink = sink;
        isWanted = sink.takesSeconds();
        rateMillihertz = instrument.rateMillihertz();
        fullScale = instrument.fullScale();
    }

    boolean areWanted() {
        return isWanted;
    }

    /** How many of {@code n} samples from {@code number} on lie in the same second as the first of them. */
    int cut(long number, int n) {
        if (!isWanted) {
            return n;
        }
        if (!began) {
            began = true;
            first = number;
            begin(0);
        } else if (number >= nextFirst) {
            begin((number - first) * 1_000 / rateMillihertz);
        }
        return (int) Math.min(n, nextFirst - number);
    }

    private void begin(long k) {
        index = k;
        indexFirst = firstOf(k);
        nextFirst = firstOf(k + 1);
    }

    private long firstOf(long k) {
        return first + Math.floorDiv(k * rateMillihertz + 999, 1_000);
    }

    @Override
    public void run(Run run) {
        if (!isWanted) {
            return;
        }
        lastNumber = run.last();
        if (!seconds.isEmpty() && seconds.getLast().index() == index) {
            seconds.getLast().add(run, fullScale);
            return;
        }
        closeLast(firstOf(seconds.isEmpty() ? 0 : seconds.getLast().index() + 1) - 1);
        SecondSoFar second = new SecondSoFar(index, run, fullScale);
        if (lastFlagged >= indexFirst) {
            second.flag(Second.OPEN_BRIDGE);
        }
        seconds.add(second);
    }

    /** Seconds are no findings: they may come a run later. */
    @Override
    public void narrow(Quiet quiet, Run run) {}

    /** The last second ends with number {@code last}. */
    private void closeLast(long last) {
        if (!seconds.isEmpty()) {
            SecondSoFar second = seconds.getLast();
            if (second.samples() < last - firstOf(second.index()) + 1) {
                second.flag(Second.GAP);
            }
        }
    }

    /** A frame said that the bridge is open: its samples are not present. */
    void openBridge(long number, int n) {
        lastFlagged = number + n - 1;
        if (began && number < nextFirst) {
            seconds.getLast().flag(Second.OPEN_BRIDGE);
        }
    }

    /** A shaft reading sits at sample {@code seat}. */
    void reading(long seat, double rpm) {
        if (!isWanted) {
            return;
        }
        for (SecondSoFar second : seconds) {
            if (second.holds(seat)) {
                second.reading(rpm);
                return;
            }
        }
    }

    /**
     * Tells the seconds that can change no more.
     *
     * @param shaftKnownThrough readings to come sit at this number or later
     */
    void report(long shaftKnownThrough) {
        while (!seconds.isEmpty()
                && (seconds.size() > 1 || ended)
                && seconds.getFirst().last() < shaftKnownThrough) {
            sink.second(seconds.removeFirst().second());
        }
    }

    @Override
    public void gap(Gap gap) {
        // seen by the number of samples when the second is over
    }

    @Override
    public void end() {
        ended = true;
        closeLast(lastNumber);
    }
}
