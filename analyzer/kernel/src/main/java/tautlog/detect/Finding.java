package tautlog.detect;

import java.math.BigInteger;
import java.util.List;

/**
 * Something that a person should know, as {@code FINDINGS.md} defines it: sample numbers and counts only, so that a mended
 * clock or another calibration changes times and newtons without changing the finding.
 *
 * <p>Numbers are sample numbers of the outing; a start or an end is always a sample that exists. Counts are raw.
 */
public sealed interface Finding {
    /** The word for it in JSON: {@code pull}, {@code overload}, … */
    String kind();

    /** Where it starts; findings are listed by this. */
    long startNumber();

    /** The last sample that it names; its start when it has no length in samples. */
    long lastNumber();

    /**
     * One loaded episode, slack to slack.
     *
     * @param endNumber the last sample at or above {@code pull_from}
     * @param peak greatest count
     * @param countSum over the samples present from start to end
     * @param samples how many those are
     * @param hookup in force where the share was greatest (the earliest of equals)
     * @param hookupIsAssumed nobody had said that this hookup was on
     * @param shareCounts the count at which the share was greatest
     * @param overloads that start within the pull
     * @param shocks whose peak lies within the pull
     * @param held the shaft stood still throughout
     * @param atLeast the peak was at the converter's end stop, or beyond the cell's capacity: more is possible
     * @param bandSamples samples by share: to 0.25, to 0.5, to 0.75, to 1, above 1
     * @param winchingSamples sample numbers for which a shaft reading of 60 rpm or more speaks
     * @param heldSamples sample numbers for which a reading below 60 rpm speaks; the rest is unknown
     * @param countSquares sum of the squares of the counts under a curved calibration, whose mean needs it; 0 under a straight line
     */
    record Pull(
            long startNumber,
            long endNumber,
            int peak,
            long countSum,
            long samples,
            String hookup,
            boolean hookupIsAssumed,
            int shareCounts,
            int overloads,
            int shocks,
            Known held,
            boolean atLeast,
            boolean hasGap,
            boolean cutByGap,
            boolean cutByEnd,
            List<Long> bandSamples,
            long winchingSamples,
            long heldSamples,
            BigInteger countSquares)
            implements Finding {
        public Pull {
            bandSamples = List.copyOf(bandSamples);
        }

        /** Under a straight line. */
        public Pull(
                long startNumber,
                long endNumber,
                int peak,
                long countSum,
                long samples,
                String hookup,
                boolean hookupIsAssumed,
                int shareCounts,
                int overloads,
                int shocks,
                Known held,
                boolean atLeast,
                boolean hasGap,
                boolean cutByGap,
                boolean cutByEnd,
                List<Long> bandSamples,
                long winchingSamples,
                long heldSamples) {
            this(
                    startNumber,
                    endNumber,
                    peak,
                    countSum,
                    samples,
                    hookup,
                    hookupIsAssumed,
                    shareCounts,
                    overloads,
                    shocks,
                    held,
                    atLeast,
                    hasGap,
                    cutByGap,
                    cutByEnd,
                    bandSamples,
                    winchingSamples,
                    heldSamples,
                    BigInteger.ZERO);
        }

        @Override
        public String kind() {
            return "pull";
        }

        @Override
        public long lastNumber() {
            return endNumber;
        }
    }

    /**
     * Tension above the limit of the hookup in force.
     *
     * @param endNumber the last sample above the limit
     * @param aboveSamples how many samples from start to end are above it
     * @param peak greatest count
     * @param atLeast a sample of it was at the converter's end stop, or beyond the cell's capacity: more is possible
     */
    record Overload(
            long startNumber,
            long endNumber,
            long aboveSamples,
            int peak,
            String hookup,
            boolean hookupIsAssumed,
            boolean atLeast,
            boolean hasGap,
            boolean cutByGap,
            boolean cutByEnd)
            implements Finding {
        @Override
        public String kind() {
            return "overload";
        }

        @Override
        public long lastNumber() {
            return endNumber;
        }
    }

    /**
     * A slack line snapping tight.
     *
     * @param startNumber s, the last sample of the slack run
     * @param slackSamples length of the slack run
     * @param peakNumber p
     * @param settledKnown false when the level after the snap is not known
     * @param settledTwice twice the median count after the snap (the sum of the middle two); 0 when not known
     * @param atLeast as in {@link Pull}
     */
    record Shock(
            long startNumber,
            long slackSamples,
            long peakNumber,
            int peak,
            boolean settledKnown,
            long settledTwice,
            String hookup,
            boolean atLeast,
            boolean hasGap)
            implements Finding {
        @Override
        public String kind() {
            return "shock";
        }

        @Override
        public long lastNumber() {
            return peakNumber;
        }
    }

    /**
     * A loaded line jerked: from {@code least} at the start to {@code peak}.
     *
     * @param atLeast as in {@link Pull}
     */
    record Jolt(long startNumber, int least, long peakNumber, int peak, String hookup, boolean atLeast)
            implements Finding {
        @Override
        public String kind() {
            return "jolt";
        }

        @Override
        public long lastNumber() {
            return peakNumber;
        }
    }

    /**
     * Tension lost at once.
     *
     * @param startNumber i, with count {@code before}
     * @param fallNumber j
     * @param after least count over the time just after j
     * @param clutch engaged at i, if the instrument tells
     * @param brake on at i, if the instrument tells
     */
    record Drop(
            long startNumber,
            long fallNumber,
            int before,
            int after,
            Known staysSlack,
            ShaftAfterDrop shaft,
            Known clutch,
            Known brake)
            implements Finding {
        @Override
        public String kind() {
            return "drop";
        }

        @Override
        public long lastNumber() {
            return fallNumber;
        }
    }

    /** What the shaft did after a drop; facts, no cause. */
    enum ShaftAfterDrop {
        UNKNOWN,
        STILL,
        STOPPED,
        RAN_UP,
        KEPT_TURNING
    }

    /**
     * The loaded shaft pulled down in speed.
     *
     * @param startNumber the latest sample at the first low reading
     * @param startTick of that reading
     * @param endTick of the reading that ends it, or of the pull's last sample
     * @param counts tension at the start
     */
    record Stall(
            long startNumber,
            long startTick,
            long endTick,
            StallEnd ended,
            double leastRpm,
            double baselineRpm,
            int counts)
            implements Finding {
        @Override
        public String kind() {
            return "stall";
        }

        @Override
        public long lastNumber() {
            return startNumber;
        }
    }

    /** How a stall ended. */
    enum StallEnd {
        RECOVERED,
        STOPPED,
        PULL_ENDED
    }

    /** The sensor, the line or the instrument is in doubt from {@code startNumber} to {@code endNumber}. */
    record Trouble(TroubleKind trouble, long startNumber, long endNumber) implements Finding {
        @Override
        public String kind() {
            return "trouble";
        }

        @Override
        public long lastNumber() {
            return endNumber;
        }
    }

    /** What kind of trouble. */
    enum TroubleKind {
        GAP,
        END_STOP,
        OPEN_BRIDGE,
        ZERO_DRIFT,
        ZERO_UNPROVEN,
        ONE_SAMPLE_PEAK
    }
}
