package tautlog.detect;

/**
 * So many samples in a row without a gap: their sum, least and greatest count, and whether the line was slack. Source: {@code
 * FINDINGS.md}, zero-drift.
 */
final class SteadyStretch {
    private final int length;
    private long next = Long.MAX_VALUE;
    private long end;
    private int least;
    private int greatest;
    private long sum;

    SteadyStretch(int length) {
        this.length = length;
    }

    int length() {
        return length;
    }

    /** The number after the stretch's last; 0 before any began. */
    long end() {
        return end;
    }

    void begin(long number) {
        next = number;
        end = number + length;
        least = Integer.MAX_VALUE;
        greatest = Integer.MIN_VALUE;
        sum = 0;
    }

    /** Begins the stretch that {@code number} lies in, of those that lie end to end from {@code first} on. */
    void beginOf(long number, long first) {
        begin(first + (number - first) / length * length);
    }

    void abandon() {
        next = Long.MAX_VALUE;
    }

    /** Takes a sample; true when it completes the stretch. One after a missing one is left out: nothing then completes it. */
    boolean add(long number, int count) {
        if (number != next) {
            return false;
        }
        next++;
        least = Math.min(least, count);
        greatest = Math.max(greatest, count);
        sum += count;
        return next == end;
    }

    /** Of a complete stretch: the line was slack and stood still. */
    boolean isSlack(Thresholds thresholds) {
        return thresholds.areStillSlack(least, greatest);
    }

    long sum() {
        return sum;
    }
}
