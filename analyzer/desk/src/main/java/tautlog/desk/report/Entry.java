package tautlog.desk.report;

import java.util.List;
import java.util.OptionalDouble;
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
 * minute; {@code share} is tension / limit. Names ending in {@code Interval} say where the true force lies.
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
    record Against(String hookup, boolean assumed, double newtons, boolean isAtMost, String governing) {}

    /**
     * One loaded episode, slack to slack.
     *
     * @param atLeast peak, mean, impulse and share are lower bounds: the converter was at its end stop
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
            Interval meanInterval)
            implements Entry {
        /** The peak may have been above the limit although none was seen there: an upper end that is unknown is one. */
        public boolean mayBeOver() {
            OptionalDouble high = peakInterval.highNewtons();
            return overloads == 0
                    && peakInterval.lowNewtons().isPresent()
                    && (high.isEmpty() || high.getAsDouble() > against.newtons());
        }
    }

    /** Tension above the limit. */
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
            Interval peakInterval)
            implements Entry {
        public Overload {
            items = List.copyOf(items);
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
            Interval peakInterval)
            implements Entry {
        @Override
        public Moment end() {
            return at;
        }
    }

    /**
     * A loaded line jerked; {@code at} is the peak.
     *
     * @param atLeast peak, rise and share are lower bounds, as in {@link Pull}
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
            Interval peakInterval)
            implements Entry {
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
