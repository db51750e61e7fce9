package tautlog.detect;

import java.util.ArrayList;
import java.util.List;

/**
 * What a part of a pull adds up to. A pull keeps two: one to its latest sample at or above {@code pull_from}, and one for the
 * samples since, which count only if another such sample follows.
 */
final class PullLoad {
    private final long[] bands = new long[5];
    long sum;
    /** Of the counts; stays 0 under a straight line. */
    final SquareSum squares = new SquareSum();

    long samples;
    int peak;
    HookupLimits limits;
    int shareCounts;
    int overloads;
    int shocks;
    long winching;
    long held;

    PullLoad(HookupLimits limits) {
        this.limits = limits;
        clear();
    }

    void clear() {
        java.util.Arrays.fill(bands, 0);
        sum = 0;
        squares.clear();
        samples = 0;
        peak = Integer.MIN_VALUE;
        overloads = 0;
        shocks = 0;
        winching = 0;
        held = 0;
    }

    void add(Run run) {
        offer(run.greatest, run.limits);
        samples += run.n;
        sum += run.sum();
        squares.add(run.squares);
        int band = run.limits.band(run.least);
        int highest = run.limits.band(run.greatest);
        int left = run.n;
        for (; band < highest; band++) {
            int above = run.above(run.limits.bands[band]);
            bands[band] += left - above;
            left = above;
        }
        bands[band] += left;
    }

    void add(int count, HookupLimits hookup) {
        offer(count, hookup);
        samples++;
        sum += count;
        if (hookup.curved) {
            squares.add(count);
        }
        bands[hookup.band(count)]++;
    }

    /** Takes over {@code later}, the part that follows this one, and empties it. */
    void take(PullLoad later) {
        if (later.isEmpty()) {
            return;
        }
        if (later.samples > 0) {
            offer(later.shareCounts, later.limits);
            peak = Math.max(peak, later.peak);
            samples += later.samples;
            sum += later.sum;
            squares.add(later.squares);
            for (int i = 0; i < bands.length; i++) {
                bands[i] += later.bands[i];
            }
        }
        overloads += later.overloads;
        shocks += later.shocks;
        winching += later.winching;
        held += later.held;
        later.clear();
    }

    private boolean isEmpty() {
        return samples == 0 && overloads == 0 && shocks == 0 && winching == 0 && held == 0;
    }

    void speaks(long numbers, boolean turning) {
        if (turning) {
            winching += numbers;
        } else {
            held += numbers;
        }
    }

    List<Long> bandSamples() {
        List<Long> list = new ArrayList<>(bands.length);
        for (long band : bands) {
            list.add(band);
        }
        return list;
    }

    private void offer(int count, HookupLimits hookup) {
        if (samples == 0 || hookup.isGreaterShare(count, limits, shareCounts)) {
            shareCounts = count;
            limits = hookup;
        }
        peak = Math.max(peak, count);
    }
}
