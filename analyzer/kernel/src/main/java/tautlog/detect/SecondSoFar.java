package tautlog.detect;

import java.util.OptionalDouble;

/** One second while its samples and shaft readings come in. */
final class SecondSoFar {
    private final long index;
    private final long first;
    private int flags;
    private int least;
    private int greatest;
    private long sum;
    private final SquareSum squares = new SquareSum();
    private int samples;
    private int shareCounts;
    private HookupLimits limits;
    private long last;
    private double rpmSum;
    private int readings;

    /** Begins with {@code run}. */
    SecondSoFar(long index, Run run, int endStopFrom) {
        this.index = index;
        this.first = run.first;
        least = run.least;
        greatest = run.greatest;
        shareCounts = run.greatest;
        limits = run.limits;
        add(run, endStopFrom);
    }

    void add(Run run, int endStopFrom) {
        least = Math.min(least, run.least);
        greatest = Math.max(greatest, run.greatest);
        sum += run.sum();
        squares.add(run.squares);
        samples += run.n;
        last = run.last();
        if (run.limits.isGreaterShare(run.greatest, limits, shareCounts)) {
            limits = run.limits;
            shareCounts = run.greatest;
        }
        if (run.greatest >= endStopFrom || run.least <= -endStopFrom - 1) {
            flags |= Second.END_STOP;
        }
        if (run.greatest > run.limits.limit) {
            flags |= Second.OVER_LIMIT;
        }
        if (run.limits.atMost) {
            flags |= Second.AT_MOST;
        }
    }

    void flag(int bit) {
        flags |= bit;
    }

    long index() {
        return index;
    }

    int samples() {
        return samples;
    }

    /** Number of its latest sample. */
    long last() {
        return last;
    }

    boolean holds(long number) {
        return number >= first && number <= last;
    }

    void reading(double rpm) {
        rpmSum += rpm;
        readings++;
    }

    Second second() {
        OptionalDouble rpm = readings == 0 ? OptionalDouble.empty() : OptionalDouble.of(rpmSum / readings);
        return new Second(
                        index,
                        first,
                        least,
                        greatest,
                        sum,
                        samples,
                        rpm,
                        limits.id,
                        limits.share(shareCounts),
                        flags,
                        squares.total())
                .inTenths();
    }
}
