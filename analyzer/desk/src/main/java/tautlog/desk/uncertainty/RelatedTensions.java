package tautlog.desk.uncertainty;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tautlog.desk.uncertainty.AngleDoubt.End;
import tautlog.desk.uncertainty.TwoTensions.Side;

/**
 * How far a figure may be off that is made of two tensions shortly after each other: the rise of a shock or a jolt, its rate, the
 * level a shock settled at, and how many times that level its peak was.
 *
 * <p>What cancels and what does not: {@link TwoTensions}. The peak's own doubts (end stop, the calibration's greatest load, what sampling
 * hides of a fast rise, noise that lifts the greatest of many) are those of {@link Doubt#ofPeak}.
 */
public final class RelatedTensions {
    /** Chosen: a level known to 5 % settles in five; one that takes more is hardly known. */
    private static final int MOST_STEPS = 50;
    /** Chosen: settles where the doubt is up to twice as great as the level. */
    private static final double PART_OF_THE_WAY = 0.6;

    private final Optional<TwoTensions> known;
    private final Words leftOut;
    private final int atLeastFrom;
    private final FastPeaks fastPeaks;

    /**
     * What the figures leave out, in words.
     *
     * @param ofLevel everything that a single tension leaves out
     * @param ofRise less what two tensions have in common
     * @param ofFactor less what is a scale
     */
    record Words(List<String> ofLevel, List<String> ofRise, List<String> ofFactor) {}

    /** How far an interval reaches to each side. */
    private record Ends(double below, double above, Optional<Cause> largest) {
        static Ends of(TwoTensions two, Side p, Side s, double w) {
            Budget low = two.budget(p, s, w, End.LOW);
            Budget high = two.budget(p, s, w, End.HIGH);
            double below = low.halfWidth();
            double above = high.halfWidth();
            return new Ends(below, above, (below > above ? low : high).largest());
        }
    }

    /** @param known empty when nothing is known of the calibration's quality */
    RelatedTensions(Optional<TwoTensions> known, Words leftOut, int atLeastFrom, FastPeaks fastPeaks) {
        this.known = known;
        this.leftOut = leftOut;
        this.atLeastFrom = atLeastFrom;
        this.fastPeaks = fastPeaks;
    }

    /**
     * Of a rise from {@code foot} to {@code peak}, the zero of both being the same. Noise lifts a peak and lowers a foot that were
     * chosen among many: the lower end goes down by both.
     *
     * @param atLeast the peak is a lower bound
     */
    public Interval rise(Extreme foot, Extreme peak, boolean atLeast) {
        if (known.isEmpty()) {
            return Interval.unknown(Doubt.QUALITY_UNKNOWN);
        }
        TwoTensions two = known.get();
        double from = two.line().newtons(foot.count());
        double to = two.line().newtons(peak.count());
        double most = two.greatestProven();
        if (from > most) {
            return Interval.unknown("both ends of the rise are beyond the greatest load of the calibration");
        }
        double low = Math.min(to, most);
        double base = Math.max(from, -most);
        Ends ends = Ends.of(two, Side.reading(low), Side.reading(base), 1);
        double noise =
                two.noiseCounts() * (foot.lift() * two.newtonsPerCount(base) + peak.lift() * two.newtonsPerCount(low));
        double crest = steepness(foot, peak).crest(low);
        Optional<Cause> largest = crest - low > ends.above() ? Optional.of(Cause.FAST_PEAK) : ends.largest();
        Interval closed = new Interval(
                OptionalDouble.of(low - base - ends.below() - noise),
                OptionalDouble.of(crest - base + ends.above()),
                largest,
                leftOut.ofRise());
        return to > most || from < -most
                ? Doubt.openAbove(closed, Doubt.BEYOND_CALIBRATION)
                : opened(closed, foot, peak, atLeast);
    }

    private Interval opened(Interval closed, Extreme foot, Extreme peak, boolean atLeast) {
        if (atLeast || peak.count() >= atLeastFrom) {
            return Doubt.openAbove(closed, Doubt.AT_ITS_END);
        }
        return steepness(foot, peak).isResolved() ? closed : Doubt.openAbove(closed, Doubt.TOO_FAST);
    }

    private Steepness steepness(Extreme foot, Extreme peak) {
        return fastPeaks.steepness(foot.number(), peak.number());
    }

    /**
     * Of the mean rate of a rise, in newtons a second. The true peak lies up to one sample before or after the greatest reading:
     * a rise of k samples took k − 1 to k + 1 of them. The ends of the rise are divided by the ends of that time, both at
     * once: wider than 95 % asks for, never narrower.
     *
     * @param rise from {@link #rise}
     * @param samples of the rise, 1 or more
     */
    public static Bounds riseRate(Interval rise, long samples, double sampleSeconds) {
        OptionalDouble low = rate(rise.lowNewtons(), samples, sampleSeconds, false);
        OptionalDouble high = rate(rise.highNewtons(), samples, sampleSeconds, true);
        Optional<Cause> largest = rise.largest();
        if (rise.isKnown() && low.isPresent()) {
            double least = rise.lowNewtons().orElseThrow();
            double most = rise.highNewtons().orElseThrow();
            boolean timeIsMost = (least + most) / samples > most - least;
            largest = timeIsMost ? Optional.of(Cause.FAST_PEAK) : largest;
        }
        return new Bounds(low, high, largest, rise.leavesOut());
    }

    private static OptionalDouble rate(OptionalDouble newtons, long samples, double sampleSeconds, boolean upper) {
        if (newtons.isEmpty()) {
            return newtons;
        }
        boolean shortest = upper == newtons.getAsDouble() > 0;
        long took = shortest ? samples - 1 : samples + 1;
        return took < 1 ? OptionalDouble.empty() : OptionalDouble.of(newtons.getAsDouble() / (took * sampleSeconds));
    }

    /**
     * Of the level that a shock settled at: a median.
     *
     * @param counts less the shift of the zero; a half is possible
     * @param readings of how many it was taken, or fewer
     */
    public Interval settled(double counts, long readings) {
        if (known.isEmpty()) {
            return Interval.unknown(Doubt.QUALITY_UNKNOWN);
        }
        TwoTensions two = known.get();
        double level = two.line().newtons(counts);
        double proven = Math.max(-two.greatestProven(), Math.min(two.greatestProven(), level));
        Side side = Side.median(proven, readings);
        Ends ends = Ends.of(two, side, side, 0);
        Interval closed = new Interval(
                OptionalDouble.of(proven - ends.below()),
                OptionalDouble.of(proven + ends.above()),
                ends.largest(),
                leftOut.ofLevel());
        if (counts >= atLeastFrom) {
            return Doubt.openAbove(closed, Doubt.AT_ITS_END);
        }
        return level > proven ? Doubt.openAbove(closed, Doubt.BEYOND_CALIBRATION) : closed;
    }

    /**
     * Of peak / settled level. A scale that is wrong (the calibration's slope, reference loads, the cell's angle) is wrong in both and
     * cancels; the zero does not, for it shifts both by as much. After Fieller: every factor r is inside with which P − r · S is no
     * further from 0 than its own doubt lets it be. So a level that is hardly known opens the upper end.
     *
     * @param foot where the rise to the peak began
     * @param counts of the settled level, a median of {@code readings} or more
     * @param atLeast the peak is a lower bound
     */
    public Bounds factor(Extreme foot, Extreme peak, double counts, long readings, boolean atLeast) {
        if (known.isEmpty()) {
            return Bounds.unknown(Doubt.QUALITY_UNKNOWN);
        }
        TwoTensions two = known.get();
        double level = two.line().newtons(counts);
        double most = two.greatestProven();
        double top = two.line().newtons(peak.count());
        if (!(level > 0) || level > most || counts >= atLeastFrom) {
            return Bounds.unknown("the level that it settled at is not known well enough");
        }
        double low = Math.min(top, most);
        double crest = steepness(foot, peak).crest(low);
        double noise = two.noiseCounts() * peak.lift() * two.newtonsPerCount(low);
        Side s = Side.median(level, readings);
        OptionalDouble least = least(two, new Side(low, 1), low - noise, s);
        OptionalDouble greatest = greatest(two, new Side(low, 1), crest, s);
        Budget budget = two.budget(Side.reading(low), s, low / level, End.HIGH);
        Optional<Cause> largest = crest - low > budget.halfWidth() ? Optional.of(Cause.FAST_PEAK) : budget.largest();
        Bounds bounds = new Bounds(least, greatest, largest, leftOut.ofFactor());
        if (top > most) {
            return bounds.openAbove(Doubt.BEYOND_CALIBRATION);
        }
        if (atLeast || peak.count() >= atLeastFrom) {
            return bounds.openAbove(Doubt.AT_ITS_END);
        }
        if (!steepness(foot, peak).isResolved()) {
            return bounds.openAbove(Doubt.TOO_FAST);
        }
        return greatest.isEmpty() ? bounds.openAbove("above it: the level may have been next to nothing") : bounds;
    }

    /**
     * The least r at which P − r · S is within its doubt, found by repeating r = (P − doubt(r)) / S, a part of the way each time, for
     * it would swing where the doubt is as great as S; 0 where it does not settle.
     */
    private static OptionalDouble least(TwoTensions two, Side p, double lifted, Side s) {
        double r = lifted / s.newtons();
        for (int step = 0; step < MOST_STEPS; step++) {
            double next = Math.max(0, (lifted - two.budget(p, s, r, End.HIGH).halfWidth()) / s.newtons());
            if (isSettled(r, next)) {
                return OptionalDouble.of(Math.min(r, next));
            }
            r += (next - r) * PART_OF_THE_WAY;
        }
        return OptionalDouble.of(0);
    }

    /** The greatest, from below by repeating r = (P + doubt(r)) / S; empty where that does not settle: there is none. */
    private static OptionalDouble greatest(TwoTensions two, Side p, double crest, Side s) {
        double r = crest / s.newtons();
        for (int step = 0; step < MOST_STEPS; step++) {
            double next = (crest + two.budget(p, s, r, End.LOW).halfWidth()) / s.newtons();
            if (isSettled(r, next)) {
                return OptionalDouble.of(Math.max(r, next));
            }
            r = next;
        }
        return OptionalDouble.empty();
    }

    private static boolean isSettled(double r, double next) {
        return Math.abs(next - r) <= 1e-6 * Math.abs(r);
    }
}
