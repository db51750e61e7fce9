package tautlog.desk.report;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a history tells. Lists stand in the order of time.
 *
 * @param whatIf what differs from the day itself, one sentence each; empty when the report says what was said then
 * @param notes what else a reader must know of how this was worked out, one sentence each
 * @param blindSpots what this cell at its place, and this shaft sensor, cannot see, one sentence each
 * @param leftOut what could not be read
 */
public record Report(
        List<Source> recordings,
        List<HookupInForce> hookups,
        List<HookupNotKnown> hookupsNotKnown,
        List<Entry.Pull> pulls,
        List<Entry.Overload> overloads,
        List<Entry.Shock> shocks,
        List<Entry.Jolt> jolts,
        List<Entry.Drop> drops,
        List<Entry.Stall> stalls,
        List<Entry.Trouble> trouble,
        List<Mark> marks,
        Hours hours,
        Trust trust,
        List<String> whatIf,
        List<String> notes,
        List<String> blindSpots,
        LeftOut leftOut) {
    public Report {
        recordings = List.copyOf(recordings);
        hookups = List.copyOf(hookups);
        hookupsNotKnown = List.copyOf(hookupsNotKnown);
        pulls = List.copyOf(pulls);
        overloads = List.copyOf(overloads);
        shocks = List.copyOf(shocks);
        jolts = List.copyOf(jolts);
        drops = List.copyOf(drops);
        stalls = List.copyOf(stalls);
        trouble = List.copyOf(trouble);
        marks = List.copyOf(marks);
        whatIf = List.copyOf(whatIf);
        notes = List.copyOf(notes);
        blindSpots = List.copyOf(blindSpots);
    }

    /**
     * A recording that was read.
     *
     * @param start empty while it has no clock
     * @param samples of the outings counted here, those that could be read
     * @param rateHertz of the slowest of them
     * @param outings counted here; those that another recording holds too count there
     * @param imported its readings were logged elsewhere
     */
    public record Source(
            String file,
            String winch,
            Optional<Instant> start,
            Optional<Instant> end,
            long samples,
            double rateHertz,
            int outings,
            boolean imported) {}

    /**
     * A hookup that was on.
     *
     * @param assumed nobody ever said so, or some pull or finding lies where nobody had
     * @param assumptions behind the limit, one line for each item: where its figures come from, what was taken for granted
     */
    public record HookupInForce(
            String id,
            double limitNewtons,
            boolean limitIsAtMost,
            String governing,
            boolean assumed,
            List<String> assumptions) {
        public HookupInForce {
            assumptions = List.copyOf(assumptions);
        }
    }

    /**
     * A stretch in which damage took along what may have named a hookup.
     *
     * @param taken id of the one that counts there, assumed: that with the lowest limit
     */
    public record HookupNotKnown(Moment start, Moment end, String taken) {}

    /** A note that a person left; {@code note} may be empty (the button). */
    public record Mark(Moment at, String note) {}

    /**
     * Hours worked, and counts. Source: {@code analyzer/FINDINGS.md}, Hours.
     *
     * @param shaftHours empty when no instrument had a shaft sensor
     * @param winchingHours likewise
     * @param heldHours likewise
     * @param jointHours relative wear; empty when the rig does not describe the driveline
     * @param jointIsAtMost the clutch was not known
     * @param shaftIsAtLeast some outings' shaft is unknown: shaft, winching and held hours are those of the others
     * @param bandHours time in pulls by share: to 0.25, 0.5, 0.75, 1, above
     */
    public record Hours(
            OptionalDouble shaftHours,
            double pullHours,
            OptionalDouble winchingHours,
            OptionalDouble heldHours,
            OptionalDouble jointHours,
            boolean jointIsAtMost,
            List<Double> bandHours,
            boolean shaftIsAtLeast) {
        /** Meters of which nothing is missing. */
        public Hours(
                OptionalDouble shaftHours,
                double pullHours,
                OptionalDouble winchingHours,
                OptionalDouble heldHours,
                OptionalDouble jointHours,
                boolean jointIsAtMost,
                List<Double> bandHours) {
            this(shaftHours, pullHours, winchingHours, heldHours, jointHours, jointIsAtMost, bandHours, false);
        }

        public Hours {
            bandHours = List.copyOf(bandHours);
        }
    }

    /**
     * How far the figures can be trusted.
     *
     * @param gaps jumps in the sample numbers
     * @param gapSeconds their time
     * @param rejected frames by the name of the first test that they failed
     * @param chainIntact empty when it was not walked
     * @param lastLink of the last outing's chain; empty when there is none
     * @param calibratedAt empty when unknown
     * @param liveFindingsAgree whether what the logger said on the day is, field by field, what its readings give now;
     *     empty when nothing was said then (imports), under WHAT IF, and where readings are damaged or still coming in
     * @param heldFrames lost because no HELLO came in time
     * @param repeatedFrames dropped because their samples had been there already
     * @param zero whether the tensions start from a zero that was seen
     * @param thinned outings whose readings are gone
     */
    public record Trust(
            long gaps,
            double gapSeconds,
            long endStopSamples,
            Map<String, Long> rejected,
            long lostFrames,
            long lostByInstrument,
            Optional<Boolean> chainIntact,
            Optional<String> lastLink,
            Optional<Instant> calibratedAt,
            Optional<Boolean> liveFindingsAgree,
            long heldFrames,
            long repeatedFrames,
            Zero zero,
            List<Thinned> thinned) {
        public Trust {
            thinned = List.copyOf(thinned);
            rejected = java.util.Collections.unmodifiableMap(new java.util.TreeMap<>(rejected));
        }

        /** Whether the figures of what happened at {@code at} are those said on the day, because its readings are gone. */
        public boolean isFromSaidLive(Moment at) {
            return thinned.stream().anyMatch(one -> one.ordinal() == at.outing());
        }

        public long rejectedFrames() {
            return rejected.values().stream().mapToLong(Long::longValue).sum();
        }
    }

    /**
     * An outing whose readings the logger took out because its disk was nearly full.
     *
     * @param outing from 1, as counted in the file
     * @param ordinal the outing's place in the history, from 1
     * @param samples that it held
     */
    public record Thinned(String file, int outing, int ordinal, long samples) {}

    /**
     * The zeros of all outings. Source: {@code analyzer/FINDINGS.md}, Zero.
     *
     * @param outings all of them
     * @param unproven outings in which no slack was proven
     * @param moves how often a zero was set
     * @param greatestShiftNewtons the greatest distance of one in force from the calibration's own, 0 or above
     */
    public record Zero(int outings, long unproven, long moves, double greatestShiftNewtons) {
        /** Whether every outing's zero is; not when there is none. */
        public boolean proven() {
            return outings > 0 && unproven == 0;
        }
    }
}
