package tautlog.oracle;

import java.util.ArrayList;
import java.util.List;
import tautlog.detect.Finding;

/** The paragraph Jolt. */
final class Jolts {
    private final Line line;
    private final List<Shocks.Snap> shocks;

    Jolts(Line line) {
        this.line = line;
        shocks = new Shocks(line).snaps();
    }

    List<Finding.Jolt> all() {
        List<Finding.Jolt> jolts = new ArrayList<>();
        int j = 0;
        while (j < line.size) {
            if (opensAt(j)) {
                int last = lastOfWindow(j);
                jolts.add(jolt(j, last));
                // "the next jolt may open after it"
                j = last;
            }
            j++;
        }
        return jolts;
    }

    /** "The window before j is the N(jolt_within) numbers j − N … j − 1, all present, and j follows them." */
    private int before(int j) {
        return (int) (j - line.samplesIn(line.settings.joltWithinSeconds()));
    }

    /** "Opens at the first j with m ≥ slack_below and T_j − m ≥ jolt_rise (0.2) · R that lies in no shock's peak window". */
    private boolean opensAt(int j) {
        int before = before(j);
        if (before < 0 || !line.isStretch(before, j)) {
            return false;
        }
        int least = line.leastCount(before, j - 1);
        return line.compare(least, line.settings.slackBelowNewtons()) >= 0
                && line.compareDifference(
                                line.count[j], least, line.settings.joltRise().multiply(line.ratedPull))
                        >= 0
                && shocks.stream().noneMatch(snap -> snap.s() < line.number[j] && line.number[j] <= snap.windowLast());
    }

    /** "[j, j + N(0.5)] …; a long gap or the outing's end ends that window". */
    private int lastOfWindow(int j) {
        int last = line.firstPlaceFrom(line.number[j] + line.samplesIn("0.5") + 1) - 1;
        return Math.min(last, line.lastBeforeLongGap(j));
    }

    /** "start: the latest sample with that m; peak: the greatest T over [j, j + N(0.5)], the earliest of equals". */
    private Finding.Jolt jolt(int j, int last) {
        int least = line.leastCount(before(j), j - 1);
        int start = j - 1;
        while (line.count[start] != least) {
            start--;
        }
        int peak = line.greatest(j, last);
        // "of a jolt, when one in its window"
        boolean atLeast = line.isLowerBound(j, last);
        return new Finding.Jolt(
                line.number[start], least, line.number[peak], line.count[peak], line.hookup[peak].id(), atLeast);
    }
}
