package tautlog.oracle;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import tautlog.detect.Finding;
import tautlog.detect.Known;

/** The paragraph Drop. */
final class Drops {
    private static final int CLUTCH = 2;
    private static final int BRAKE = 4;

    private final Line line;
    private final ShaftSpeed shaft;

    Drops(Line line, ShaftSpeed shaft) {
        this.line = line;
        this.shaft = shaft;
    }

    List<Finding.Drop> all() {
        List<Finding.Drop> drops = new ArrayList<>();
        long firstAllowed = line.isEmpty() ? 0 : line.first();
        for (int j = 0; j < line.size; j++) {
            int i = highestBefore(j, firstAllowed);
            if (i >= 0 && falls(i, j)) {
                drops.add(drop(i, j));
                // "(after the previous drop's j …)"; "The next drop needs a sample ≥ drop_from · R after j."
                firstAllowed = line.number[j] + 1;
            }
        }
        return drops;
    }

    /**
     * "The window before j is the numbers max(j − N(drop_within), previous j + 1, outing's first) … j − 1; all must be present, at
     * least one, and j follows them."
     *
     * @return the place of the greatest in it, "the latest of equals"; below 0 when there is no such window
     */
    private int highestBefore(int j, long firstAllowed) {
        long from = Math.max(line.number[j] - line.samplesIn(line.settings.dropWithinSeconds()), firstAllowed);
        if (from >= line.number[j] || !line.isPresent(from) || !line.isStretch(line.placeOf(from), j)) {
            return -1;
        }
        int highest = line.placeOf(from);
        for (int i = highest; i < j; i++) {
            if (line.count[i] >= line.count[highest]) {
                highest = i;
            }
        }
        return highest;
    }

    /** "T_i ≥ drop_from (0.10) · R …, and T_j ≤ (1 − drop_by (0.8)) · T_i". */
    private boolean falls(int i, int j) {
        BigDecimal left = BigDecimal.ONE.subtract(line.settings.dropBy());
        return !line.isBelow(i, line.settings.dropFrom().multiply(line.ratedPull))
                && line.compareMultiple(line.count[j], left, BigDecimal.valueOf(line.count[i])) <= 0;
    }

    private Finding.Drop drop(int i, int j) {
        return new Finding.Drop(
                line.number[i],
                line.number[j],
                line.count[i],
                after(j),
                staysSlack(j),
                shaft.afterDrop(line.tick[i]),
                input(line.number[i], CLUTCH),
                input(line.number[i], BRAKE));
    }

    /** "after_n is over the present samples of [j, j + N(0.15)], cut at a long gap and at the end." */
    private int after(int j) {
        int last = line.firstPlaceFrom(line.number[j] + line.samplesIn("0.15") + 1) - 1;
        return line.leastCount(j, Math.min(last, line.lastBeforeLongGap(j)));
    }

    /**
     * "stays_slack over [j + N(0.15), j + N(2)]: false at the first sample ≥ slack_below before any long gap; else null if a number
     * is missing or the outing ends inside; else true."
     */
    private Known staysSlack(int j) {
        long from = line.number[j] + line.samplesIn("0.15");
        long to = line.number[j] + line.samplesIn("2");
        int lastBeforeGap = line.lastBeforeLongGap(j);
        for (int i = line.firstPlaceFrom(from); i < line.firstPlaceFrom(to + 1) && i <= lastBeforeGap; i++) {
            if (!line.isBelow(i, line.settings.slackBelowNewtons())) {
                return Known.NO;
            }
        }
        // "With a long gap before j + N(0.15) it is unknown."
        if (line.number[lastBeforeGap] < from) {
            return Known.UNKNOWN;
        }
        for (long number = from; number <= to; number++) {
            if (!line.isPresent(number)) {
                return Known.UNKNOWN;
            }
        }
        return Known.YES;
    }

    Known clutchAt(long number) {
        return input(number, CLUTCH);
    }

    /** "Clutch and brake are the latest INPUT that acts at or before i, when its present bit is set." */
    private Known input(long number, int bit) {
        Known known = Known.UNKNOWN;
        for (OutingData.Input input : line.data.inputs()) {
            if (input.atNumber() <= number) {
                boolean isSet = (input.state() & bit) != 0;
                known = (input.present() & bit) == 0 ? Known.UNKNOWN : isSet ? Known.YES : Known.NO;
            }
        }
        return known;
    }
}
