package tautlog.detect;

import java.util.Arrays;

/** Shaft readings in order of their ticks: a queue of primitives that grows when it must. */
final class ReadingRing {
    private long[] ticks = new long[128];
    private double[] rpm = new double[128];
    private double bound;
    private int head;
    private int size;

    int size() {
        return size;
    }

    boolean isEmpty() {
        return size == 0;
    }

    void add(long tick, double speed) {
        if (size == ticks.length) {
            grow();
        }
        int at = (head + size++) & (ticks.length - 1);
        ticks[at] = tick;
        rpm[at] = speed;
        bound = Math.max(bound, speed);
    }

    /** Adds the readings from {@code from} on, leaving out shaft frames that gave none. */
    void addSpeeds(ShaftReadings readings, int from) {
        for (int i = from; i < readings.size(); i++) {
            if (!Double.isNaN(readings.rpm(i))) {
                add(readings.tick(i), readings.rpm(i));
            }
        }
    }

    /** Adds those that begin before {@code tick} to {@code into}, up to the first shaft frame that gave no reading. */
    void copySpeedsBefore(long tick, ShaftReadings into) {
        for (int i = 0; i < size; i++) {
            int at = (head + i) & (ticks.length - 1);
            if (ticks[at] >= tick || Double.isNaN(rpm[at])) {
                return;
            }
            into.add(ticks[at], rpm[at]);
        }
    }

    long firstTick() {
        return ticks[head];
    }

    double firstRpm() {
        return rpm[head];
    }

    void removeFirst() {
        removeFirst(1);
    }

    void removeFirst(int n) {
        head = (head + n) & (ticks.length - 1);
        size -= n;
    }

    void forgetBefore(long tick) {
        while (size > 0 && ticks[head] < tick) {
            removeFirst();
        }
    }

    /** A speed that none here exceeds: the greatest of all that came since {@link #greatest} was last worked out. */
    double greatestBound() {
        return bound;
    }

    /** The greatest speed; 0 when there is none. */
    double greatest() {
        double greatest = 0;
        for (int i = 0; i < size; i++) {
            greatest = Math.max(greatest, rpm[(head + i) & (rpm.length - 1)]);
        }
        bound = greatest;
        return greatest;
    }

    /** The speeds of the readings with a tick in ({@code after}, {@code through}], sorted; empty when there are none. */
    double[] sorted(long after, long through) {
        double[] found = new double[size];
        int n = 0;
        for (int i = 0; i < size; i++) {
            int at = (head + i) & (ticks.length - 1);
            if (ticks[at] > after && ticks[at] <= through) {
                found[n++] = rpm[at];
            }
        }
        double[] sorted = Arrays.copyOf(found, n);
        Arrays.sort(sorted);
        return sorted;
    }

    /** The median of sorted speeds, one or more: the mean of the middle two when their number is even. */
    static double median(double[] sorted) {
        return (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
    }

    private void grow() {
        long[] moreTicks = new long[2 * size];
        double[] moreRpm = new double[2 * size];
        for (int i = 0; i < size; i++) {
            int at = (head + i) & (size - 1);
            moreTicks[i] = ticks[at];
            moreRpm[i] = rpm[at];
        }
        ticks = moreTicks;
        rpm = moreRpm;
        head = 0;
    }
}
