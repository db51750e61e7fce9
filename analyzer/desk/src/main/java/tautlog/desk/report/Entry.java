package tautlog.desk.report;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tautlog.desk.uncertainty.Bounds;
import tautlog.desk.uncertainty.Interval;
import tautlog.detect.Finding.ShaftAfterDrop;
import tautlog.detect.Finding.StallEnd;
import tautlog.detect.Finding.TroubleKind;
import tautlog.detect.Known;
import tautlog.rig.Band;

/**
 * A finding in newtons, seconds and UTC. Definitions: {@code analyzer/FINDINGS.md}.
 *
 * <p>Names ending in {@code Newtons} are forces, in {@code Seconds} times, in {@code Rpm} shaft speeds in revolutions per
 * minute; {@code share} is tension / limit. Names ending in {@code Interval} or {@code Bounds} say where the true figure lies.
 */
public sealed interface Entry {
    /** Where it starts; entries are listed by this. */
    Moment start();

    /** Where it ends; its start when it has no length. */
    Moment end();

    /**
     * The limit that a tension is compared with.
     *
     * @param hookup id of the hookup in force
     * @param assumed nobody had said that it was on
     * @param newtons the limit
     * @param isAtMost the true limit is lower, shares are "at least"
     * @param governing id of the gear that sets it
     */
    record Against(String hookup, boolean assumed, double newtons, boolean isAtMost, String governing) {
        /** What share of the limit a tension is. */
        Bounds shareOf(Interval tension) {
            return Bounds.share(tension, newtons, isAtMost);
        }
    }

    /**
     * One loaded episode, slack to slack.
     *
     * @param atLeast peak, mean, impulse and share are lower bounds: the converter was at its end stop
     * @param shareInterval of the tension that was the greatest share, which is not the peak where another limit was in force there
     */
    record Pull(
            Moment start,
            Moment end,
            double durationSeconds,
            double peakNewtons,
            double meanNewtons,
            double impulseNewtonSeconds,
            Against against,
            double share,
            int overloads,
            int shocks,
            Known held,
            boolean atLeast,
            boolean hasGap,
            boolean cutByGap,
            boolean cutByEnd,
            Interval peakInterval,
            Interval meanInterval,
            Bounds impulseBounds,
            Interval shareInterval)
            implements Entry {
        /** Where the greatest share lies; a limit that is only known as "at most" leaves it without an upper end. */
        public Bounds shareBounds() {
            return against.shareOf(shareInterval);
        }

        /**
         * The tension may have been above the limit although no reading was: an upper end that is unknown is one. Of a limit
         * that is only known as "at most" the share says it.
         */
        public boolean mayBeOver() {
            return overloads == 0 && overLimit() == Known.YES;
        }

        /** Whether the tension was, or may have been, above the limit; not known where nothing bounds it or the limit. */
        public Known overLimit() {
            OptionalDouble high = shareInterval.highNewtons();
            if (overloads > 0) {
                return Known.YES;
            } else if (shareInterval.lowNewtons().isEmpty()) {
                return Known.UNKNOWN;
            } else if (high.isEmpty() || high.getAsDouble() > against.newtons()) {
                return Known.YES;
            }
            return against.isAtMost() ? Known.UNKNOWN : Known.NO;
        }
    }

    /**
     * Tension above the limit.
     *
     * @param bandMayBe the band at the upper end of the interval, {@code band} or a worse one; empty when nothing is known of how far
     *     the peak may be off
     */
    record Overload(
            Moment start,
            Moment end,
            double aboveSeconds,
            double peakNewtons,
            Against against,
            double share,
            Band band,
            boolean atLeast,
            boolean hasGap,
            boolean cutByGap,
            boolean cutByEnd,
            List<ItemLoad> items,
            Interval peakInterval,
            Optional<Band> bandMayBe)
            implements Entry {
        public Overload {
            items = List.copyOf(items);
        }

        public Bounds shareBounds() {
            return against.shareOf(peakInterval);
        }

        /** A worse band than {@link #band} that is not ruled out. */
        public Optional<Band> worseMayBe() {
            return bandMayBe.filter(worse -> worse.compareTo(band) > 0);
        }
    }

    /**
     * A slack line snapping tight.
     *
     * @param at the peak
     * @param peakIfHalfSineNewtons an estimate, no bound
     * @param resolved false when the instrument is too slow for it
     * @param settledNewtons empty when unknown
     * @param factor empty when the settled level is unknown or not above 0
     * @param atLeast peak, rise rate, estimate, factor and share are lower bounds, as in {@link Pull}
     */
    record Shock(
            Moment start,
            Moment at,
            double slackSeconds,
            double riseSeconds,
            double riseNewtonsPerSecond,
            double peakNewtons,
            double peakIfHalfSineNewtons,
            boolean resolved,
            OptionalDouble settledNewtons,
            OptionalDouble factor,
            Against against,
            double share,
            boolean atLeast,
            boolean hasGap,
            Interval peakInterval,
            Bounds riseRateBounds,
            Interval settledInterval,
            Bounds factorBounds)
            implements Entry {
        public Bounds shareBounds() {
            return against.shareOf(peakInterval);
        }

        @Override
        public Moment end() {
            return at;
        }
    }

    /**
     * A loaded line jerked; {@code at} is the peak.
     *
     * @param atLeast peak, rise and share are lower bounds, as in {@link Pull}
     * @param resolved false when the instrument is too slow for it
     */
    record Jolt(
            Moment start,
            Moment at,
            double peakNewtons,
            double riseNewtons,
            double riseSeconds,
            Against against,
            double share,
            boolean atLeast,
            Interval peakInterval,
            boolean resolved,
            Interval riseInterval)
            implements Entry {
        public Bounds shareBounds() {
            return against.shareOf(peakInterval);
        }

        @Override
        public Moment end() {
            return at;
        }
    }

    /**
     * Tension lost at once.
     *
     * @param against the limit in force where it starts
     */
    record Drop(
            Moment start,
            double beforeNewtons,
            double afterNewtons,
            double fallSeconds,
            Known staysSlack,
            ShaftAfterDrop shaft,
            Known clutch,
            Known brake,
            Against against,
            Interval beforeInterval,
            Interval afterInterval)
            implements Entry {
        @Override
        public Moment end() {
            return start;
        }
    }

    /** The loaded shaft pulled down in speed. */
    record Stall(
            Moment start,
            Moment end,
            StallEnd ended,
            double leastRpm,
            double beforeRpm,
            double tensionNewtons,
            Interval tensionInterval)
            implements Entry {}

    /** The sensor, the line or the instrument in doubt. */
    record Trouble(Moment start, Moment end, TroubleKind trouble) implements Entry {}
}
