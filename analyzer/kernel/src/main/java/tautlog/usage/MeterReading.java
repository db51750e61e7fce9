package tautlog.usage;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * What the meters of one outing, or of several added up, show. Whole numbers only, so that a sum does not depend on order or
 * grouping. Source: {@code FINDINGS.md}, Hours.
 *
 * @param outings how many are added up here
 * @param outingsWithShaft of how many of them a shaft reading is known
 * @param outingsWithJoint of how many of them the joint's wear is known
 * @param shaft time with the shaft at 60 rpm or more, of those of which it is known
 * @param pull time in pulls
 * @param winching time in pulls with the shaft at 60 rpm or more, of those of which it is known
 * @param held time in pulls with the shaft known to stand still, of those of which it is known
 * @param bands time in pulls by share of the limit: to 0.25, to 0.5, to 0.75, to 1, above
 * @param jointNanos nanoseconds of the joint at its rating, of those of which it is known
 * @param jointIsAtMost in some of that time it is not known whether the clutch was engaged
 * @param counts findings by their kind
 */
public record MeterReading(
        int outings,
        int outingsWithShaft,
        int outingsWithJoint,
        TimeSum shaft,
        TimeSum pull,
        TimeSum winching,
        TimeSum held,
        List<TimeSum> bands,
        long jointNanos,
        boolean jointIsAtMost,
        Map<String, Long> counts) {
    static final int BANDS = 5;

    private static final double NANOS_PER_HOUR = 3_600e9;

    /** Of no outing. */
    public static final MeterReading NONE = new MeterReading(
            0,
            0,
            0,
            TimeSum.ZERO,
            TimeSum.ZERO,
            TimeSum.ZERO,
            TimeSum.ZERO,
            Collections.nCopies(BANDS, TimeSum.ZERO),
            0,
            false,
            Map.of());

    public MeterReading {
        bands = List.copyOf(bands);
        counts = Collections.unmodifiableMap(new TreeMap<>(counts));
    }

    /** These and those of other outings. */
    public MeterReading plus(MeterReading other) {
        List<TimeSum> bothBands = new ArrayList<>();
        for (int i = 0; i < BANDS; i++) {
            bothBands.add(bands.get(i).plus(other.bands.get(i)));
        }
        Map<String, Long> both = new TreeMap<>(counts);
        other.counts.forEach((kind, n) -> both.merge(kind, n, Math::addExact));
        return new MeterReading(
                outings + other.outings,
                outingsWithShaft + other.outingsWithShaft,
                outingsWithJoint + other.outingsWithJoint,
                shaft.plus(other.shaft),
                pull.plus(other.pull),
                winching.plus(other.winching),
                held.plus(other.held),
                bothBands,
                Math.addExact(jointNanos, other.jointNanos),
                jointIsAtMost || other.jointIsAtMost,
                both);
    }

    /** The same, and nothing known of the joint: what it bore cannot be told without the readings of the line. */
    public MeterReading withoutJoint() {
        return new MeterReading(outings, outingsWithShaft, 0, shaft, pull, winching, held, bands, 0, false, counts);
    }

    /** Empty when no shaft reading of any outing is known: a sensor that never spoke does not say that the shaft stood. */
    public OptionalDouble shaftHours() {
        return ofShaft(shaft);
    }

    public double pullHours() {
        return pull.hours();
    }

    /** Empty as {@link #shaftHours}. */
    public OptionalDouble winchingHours() {
        return ofShaft(winching);
    }

    /** Empty as {@link #shaftHours}; what is left of the pulls beside winching and held is not known. */
    public OptionalDouble heldHours() {
        return ofShaft(held);
    }

    /** Whether hours of shaft, winching and held lack some outings. */
    public boolean shaftIsAtLeast() {
        return outingsWithShaft > 0 && outingsWithShaft < outings;
    }

    /** Hours of the joint at its rating, a bound from above: so empty when it is not known of a single outing. */
    public OptionalDouble jointHours() {
        return outings > 0 && outingsWithJoint == outings
                ? OptionalDouble.of(jointNanos / NANOS_PER_HOUR)
                : OptionalDouble.empty();
    }

    /** False only when the clutch was known to be engaged in all the time that {@link #jointHours} counts. */
    public boolean jointHoursAreAtMost() {
        return jointIsAtMost || jointHours().isEmpty();
    }

    /** In hours, as {@link #bands}. */
    public List<Double> bandHours() {
        return bands.stream().map(TimeSum::hours).toList();
    }

    /** How many findings of {@code kind} there were: {@code pull}, {@code overload}, … */
    public long count(String kind) {
        return counts.getOrDefault(kind, 0L);
    }

    private OptionalDouble ofShaft(TimeSum time) {
        return outingsWithShaft == 0 ? OptionalDouble.empty() : OptionalDouble.of(time.hours());
    }
}
