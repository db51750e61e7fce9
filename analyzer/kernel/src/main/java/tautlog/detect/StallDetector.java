package tautlog.detect;

import java.util.ArrayDeque;
import java.util.Deque;
import org.jspecify.annotations.Nullable;
import tautlog.detect.Finding.Stall;
import tautlog.detect.Finding.StallEnd;
import tautlog.sample.Instrument;

/**
 * Finds stalls. Source: {@code FINDINGS.md}, Stall.
 *
 * <p>Readings come in order, each with the sample at which it sits. One whose sample may or may not lie in a pull waits until the
 * pulls know. While a stall is open, readings past the pull's latest sample at or above {@code pull_from} count only if such a
 * sample follows; their effect is kept apart.
 */
final class StallDetector {
    private static final int LEAST_READINGS = 20;
    private static final double RECOVERED = 0.9;

    private record Reading(long tick, double rpm, long seat, int counts, boolean loaded) {}

    private final Thresholds thresholds;
    private final CountRing ring;
    private final PullDetector pulls;
    private final FindingSink sink;
    private final long fiveSeconds;
    private final long bridgeTicksTimesRate;
    private final long rateMillihertz;
    private final Deque<Reading> waiting = new ArrayDeque<>();
    private final ReadingRing history = new ReadingRing();
    /** Since a stall ended stopped, a reading came that was not low; else a shaft that stands would stall anew with each. */
    private boolean armed = true;

    private boolean open;
    private Reading first = new Reading(0, 0, 0, 0, false);
    private double baseline;
    private double least;
    private @Nullable ClosedPull pull;
    private boolean tail;
    private long tailSeat;
    private double tailLeast;
    private boolean tailEnded;
    private boolean tailArms;
    private Reading tailEnd = first;

    StallDetector(Instrument instrument, Thresholds thresholds, CountRing ring, PullDetector pulls, FindingSink sink) {
        this.thresholds = thresholds;
        this.ring = ring;
        this.pulls = pulls;
        this.sink = sink;
        fiveSeconds = 5 * instrument.tickHz();
        rateMillihertz = instrument.rateMillihertz();
        bridgeTicksTimesRate = thresholds.bridge * instrument.tickHz() * 1_000;
    }

    /** A shaft reading was settled: it sits at {@code seat}. */
    void reading(long tick, double rpm, Seat seat) {
        boolean isNext = isAtRest();
        if (isNext && isPlain(tick, rpm)) {
            history.add(tick, rpm);
            return;
        }
        boolean inRing = ring.holds(seat.place);
        boolean mayBeLoaded = inRing && ring.greatestBound(seat.place, seat.place) >= thresholds.pullFrom;
        int counts = mayBeLoaded ? ring.at(seat.place) : Integer.MIN_VALUE;
        boolean loaded = counts >= thresholds.pullFrom && isNearSample(tick, seat);
        if (isNext && !loaded) {
            history.add(tick, rpm);
        } else {
            waiting.add(new Reading(tick, rpm, seat.number, counts, loaded));
        }
    }

    /** Whether the next reading is judged at once, and changes nothing when its sample is not loaded. */
    boolean isAtRest() {
        return !open && armed && waiting.isEmpty();
    }

    /** Readings from {@code from} on were settled, at samples that are not loaded. Call only when {@link #isAtRest}. */
    void unloaded(ShaftReadings readings, int from) {
        history.addSpeeds(readings, from);
        history.forgetBefore(readings.tick(readings.size() - 1) - fiveSeconds);
    }

    /** Whether the next reading to be judged changes nothing under any load: most are so, and need not wait. */
    private boolean isPlain(long tick, double rpm) {
        history.forgetBefore(tick - fiveSeconds);
        return history.size() < LEAST_READINGS || rpm >= thresholds.stallTo * history.greatestBound();
    }

    private boolean isNearSample(long tick, Seat seat) {
        if (seat.next != Seat.NONE) {
            return seat.next - seat.number - 1 <= thresholds.bridge;
        }
        return (tick - seat.tick) * rateMillihertz <= bridgeTicksTimesRate;
    }

    /**
     * Takes the readings that can be judged. Call before the pulls report what is closed.
     *
     * @param shaftKnownThrough readings to come sit at this number or later
     */
    void settle(long shaftKnownThrough) {
        while (!waiting.isEmpty() && judge(waiting.getFirst())) {
            Reading reading = waiting.removeFirst();
            history.add(reading.tick, reading.rpm);
        }
        if (open) {
            takeTail();
            if (open && shaftKnownThrough > pullEnd() && pull != null) {
                endWithPull(pull);
            }
        }
    }

    /** True when the next reading may tell a stall. */
    boolean isOpen() {
        return open;
    }

    private boolean judge(Reading reading) {
        history.forgetBefore(reading.tick - fiveSeconds);
        if (open) {
            takeTail();
        }
        return open ? goOn(reading) : mayOpen(reading);
    }

    private boolean goOn(Reading reading) {
        if (reading.seat <= pullEnd()) {
            least = Math.min(least, reading.rpm);
            if (ends(reading)) {
                finish(howEnded(reading), reading.tick);
            }
        } else if (pull == null) {
            addToTail(reading);
        } else {
            endWithPull(pull);
            return mayOpen(reading);
        }
        return true;
    }

    /** The end of the pull that the open stall belongs to, as far as it is known. */
    private long pullEnd() {
        if (pull == null) {
            pull = pulls.closedPullAt(first.seat);
        }
        return pull == null ? pulls.endSoFar() : pull.end;
    }

    private void addToTail(Reading reading) {
        if (tailEnded) {
            tailArms |= Double.isNaN(medianIfLow(reading));
        } else {
            tailLeast = tail ? Math.min(tailLeast, reading.rpm) : reading.rpm;
            tail = true;
            tailSeat = reading.seat;
            tailEnded = ends(reading);
            tailEnd = reading;
        }
    }

    /** What came past the pull's end so far belongs to it now, when the end has moved beyond it. */
    private void takeTail() {
        if (tail && tailSeat <= pullEnd()) {
            tail = false;
            least = Math.min(least, tailLeast);
            if (tailEnded) {
                finish(howEnded(tailEnd), tailEnd.tick);
            }
        }
    }

    private boolean ends(Reading reading) {
        return reading.rpm == 0 || reading.rpm >= RECOVERED * baseline;
    }

    private static StallEnd howEnded(Reading reading) {
        return reading.rpm == 0 ? StallEnd.STOPPED : StallEnd.RECOVERED;
    }

    /** Opens a stall when the reading is one; false when the pulls do not know yet whether it lies in one. */
    private boolean mayOpen(Reading reading) {
        if (armed && !reading.loaded) {
            return true;
        }
        double median = medianIfLow(reading);
        armed |= Double.isNaN(median);
        if (Double.isNaN(median) || !armed || !reading.loaded) {
            return true;
        }
        Known inPull = pulls.holds(reading.seat);
        if (inPull == Known.YES) {
            open(reading, median);
        }
        return inPull != Known.UNKNOWN;
    }

    /** The median of the 5 s before a low reading; NaN when the reading is not low. */
    private double medianIfLow(Reading reading) {
        if (history.size() < LEAST_READINGS
                // the bound first: it costs nothing, and while the shaft runs evenly it answers
                || reading.rpm >= thresholds.stallTo * history.greatestBound()
                || reading.rpm >= thresholds.stallTo * history.greatest()) {
            return Double.NaN;
        }
        double median = ReadingRing.median(history.sorted(Long.MIN_VALUE, reading.tick - 1));
        boolean isLow = median >= ShaftSpeed.TURNING_RPM && reading.rpm < thresholds.stallTo * median;
        return isLow ? median : Double.NaN;
    }

    private void open(Reading reading, double median) {
        open = true;
        pull = null;
        tail = false;
        tailEnded = false;
        tailArms = false;
        first = reading;
        baseline = median;
        least = reading.rpm;
        if (reading.rpm == 0) {
            finish(StallEnd.STOPPED, reading.tick);
        }
    }

    private void endWithPull(ClosedPull ended) {
        finish(StallEnd.PULL_ENDED, Math.max(first.tick, ended.endTick()));
    }

    private void finish(StallEnd how, long tick) {
        open = false;
        armed = how != StallEnd.STOPPED || tailArms;
        tailArms = false;
        sink.finding(new Stall(first.seat, first.tick, tick, how, least, baseline, first.counts));
    }
}
