package tautlog.oracle;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import tautlog.detect.Finding;

/** The paragraph Shock. */
final class Shocks {
    /** "the median over the samples between, when they are 20 or more". */
    private static final int LEAST_SAMPLES = 20;

    private static final String SETTLES_AFTER = "0.5";
    private static final String SETTLED_BY = "1.5";

    private final Line line;
    private final List<SlackRun> slackRuns;

    Shocks(Line line) {
        this.line = line;
        slackRuns = slackRuns();
    }

    /** Places of the first and the last sample of a slack run. */
    private record SlackRun(int first, int last) {}

    /** The peak window "(s, s + N(shock_window)], … as cut", by its last number, and the shock found in it. */
    record Snap(long s, long windowLast, Finding.Shock shock) {}

    List<Finding.Shock> all() {
        return snaps().stream().map(Snap::shock).toList();
    }

    /** "A slack run: T < slack_below for slack_for or longer", in one stretch: "Any gap resets … runs of slack". */
    private List<SlackRun> slackRuns() {
        List<SlackRun> runs = new ArrayList<>();
        int place = 0;
        while (place < line.size) {
            if (!isSlack(place)) {
                place++;
                continue;
            }
            int last = place;
            while (last + 1 < line.size && line.gapBefore(last + 1) == 0 && isSlack(last + 1)) {
                last++;
            }
            if (last - place + 1 >= line.samplesIn(line.settings.slackForSeconds())) {
                runs.add(new SlackRun(place, last));
            }
            place = last + 1;
        }
        return runs;
    }

    private boolean isSlack(int place) {
        return line.isBelow(place, line.settings.slackBelowNewtons());
    }

    /** "It ends at the first sample ≥ slack_below; s is the sample before." */
    List<Snap> snaps() {
        List<Snap> snaps = new ArrayList<>();
        for (SlackRun run : slackRuns) {
            boolean snapsTight = run.last + 1 < line.size && line.gapBefore(run.last + 1) == 0;
            if (snapsTight) {
                snap(run).ifPresent(snaps::add);
            }
        }
        return snaps;
    }

    private Optional<Snap> snap(SlackRun run) {
        long s = line.number[run.last];
        long stretchLast = line.number[line.lastBeforeLongGap(run.last)];
        // "cut before q, the first sample of the next slack run, when q lies in it; cut at a long gap and at the
        // outing's end"
        long windowLast = Math.min(s + line.samplesIn(line.settings.shockWindowSeconds()), stretchLast);
        long nextSlack = firstSlackAfter(s, stretchLast);
        windowLast = Math.min(windowLast, nextSlack - 1);
        int peak = line.greatest(run.last + 1, line.firstPlaceFrom(windowLast + 1) - 1);
        long p = line.number[peak];

        long settlesAfter = p + line.samplesIn(SETTLES_AFTER);
        long settledBy = p + line.samplesIn(SETTLED_BY);
        long settledLast;
        long least;
        if (nextSlack <= settledBy) {
            // "the first sample of a slack run, at or before p + N(1.5): the median over the samples between, when they
            // are 20 or
            // more, else the level is unknown (null)"
            settledLast = nextSlack - 1;
            least = LEAST_SAMPLES;
        } else if (stretchLast < settledBy) {
            // "a long gap or the outing's end before p + N(1.5) is reached: the median over the samples between when 20
            // or more,
            // else no finding"
            settledLast = stretchLast;
            if (countsIn(settlesAfter, settledLast).length < LEAST_SAMPLES) {
                return Optional.empty();
            }
            least = LEAST_SAMPLES;
        } else {
            // "When the whole settling window is reached, no least number of samples is asked; with none present …
            // unknown."
            settledLast = settledBy;
            least = 1;
        }
        int[] settling = countsIn(settlesAfter, settledLast);
        boolean known = settling.length >= least;
        long twice = known ? twiceMedian(settling) : 0;
        if (!isShock(peak, known, twice)) {
            return Optional.empty();
        }
        // "A short gap lies in window or settling when one of its missing numbers is in (s, s + N(shock_window)] or
        // (p + N(0.5), p + N(1.5)], each as cut."
        boolean hasGap = isAnyMissing(s, windowLast) || isAnyMissing(settlesAfter, settledLast);
        return Optional.of(new Snap(
                s,
                windowLast,
                new Finding.Shock(
                        s,
                        run.last - run.first + 1,
                        p,
                        line.count[peak],
                        known,
                        twice,
                        line.hookup[peak].id(),
                        // "of a shock, when one in its peak window"
                        line.isLowerBound(run.last + 1, line.firstPlaceFrom(windowLast + 1) - 1),
                        hasGap)));
    }

    private long firstSlackAfter(long s, long stretchLast) {
        return slackRuns.stream()
                .mapToLong(run -> line.number[run.first])
                .filter(q -> q > s && q <= stretchLast)
                .min()
                .orElse(Long.MAX_VALUE);
    }

    /** "Shock when T_p ≥ shock_from (0.15) · R and (S unknown or T_p ≥ shock_factor (2.0) · S)." */
    private boolean isShock(int peak, boolean known, long twiceSettled) {
        if (line.isBelow(peak, line.settings.shockFrom().multiply(line.ratedPull))) {
            return false;
        }
        BigDecimal settled = BigDecimal.valueOf(twiceSettled).divide(BigDecimal.valueOf(2));
        return !known || line.compareMultiple(line.count[peak], line.settings.shockFactor(), settled) >= 0;
    }

    /** Counts of the present samples with a number in (after, last]. */
    private int[] countsIn(long after, long last) {
        int from = line.firstPlaceFrom(after + 1);
        int to = line.firstPlaceFrom(last + 1);
        return from >= to ? new int[0] : Arrays.copyOfRange(line.count, from, to);
    }

    /** "the median of an even number averages the middle two"; twice that. */
    private static long twiceMedian(int[] counts) {
        int[] sorted = counts.clone();
        Arrays.sort(sorted);
        return (long) sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2];
    }

    /** True when a number in (after, last] is missing. */
    private boolean isAnyMissing(long after, long last) {
        return countsIn(after, last).length < last - after;
    }
}
