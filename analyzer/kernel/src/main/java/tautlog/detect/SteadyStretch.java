package tautlog.detect;

/** So many samples in a row without a gap: their sum, least and greatest count. */
final class SteadyStretch {
    private final int length;
    private long next = Long.MAX_VALUE;
    private long end = Long.MIN_VALUE;
    private int least;
    private int greatest;
    private long sum;

    SteadyStretch(int length) {
        this.length = length;
    }

    int length() {
        return length;
    }

    /** The number after the stretch's last. */
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

    void abandon() {
        next = Long.MAX_VALUE;
    }

    /** Takes a sample; true when it completes the stretch. One after a missing number is left out: nothing then completes it. */
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

    int least() {
        return least;
    }

    int greatest() {
        return greatest;
    }

    long sum() {
        return sum;
    }
}
