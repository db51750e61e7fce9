package tautlog.usage;

import java.util.Collections;
import java.util.List;

/**
 * The load cycles of a winch's line: a trend, no life. Broken wires and diameter, seen by a person, decide.
 *
 * <p>Source of the count: {@code FINDINGS.md}, Rainflow. The sum is Palmgren's and Miner's with the slope {@value #SLOPE} of six-strand
 * wire rope in tension, API RP 2SK (from memory): one cycle whose range is the rope's working load limit counts as 1, a cycle of r times
 * that range as r to the power {@value #SLOPE}.
 *
 * @param gear id of the rope
 * @param halfCycles half cycles by range / working load limit: up to each of {@link #EDGES}, then above the last
 * @param minerNanocycles the sum in thousand millionths of a cycle, each cycle rounded, so that sums are exact
 * @param isAtLeast readings of some outings are gone: their cycles are not here
 */
public record RopeUse(String gear, List<Long> halfCycles, long minerNanocycles, boolean isAtLeast) {
    /** Of the T-N curve of six-strand rope: N · r^m constant. */
    public static final double SLOPE = 4.09;

    /** Upper edges of the classes, inclusive. */
    public static final List<Double> EDGES = List.of(0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0, 1.5, 2.0);

    private static final double NANOS = 1e9;

    /** @throws IllegalArgumentException if there is not one number for each class */
    public RopeUse {
        if (halfCycles.size() != EDGES.size() + 1) {
            throw new IllegalArgumentException(
                    "halfCycles must hold " + (EDGES.size() + 1) + " figures, held " + halfCycles.size());
        }
        halfCycles = List.copyOf(halfCycles);
    }

    public static RopeUse none(String gear) {
        return new RopeUse(gear, Collections.nCopies(EDGES.size() + 1, 0L), 0, false);
    }

    /** Cycles of the range of the working load limit that would add up to the same sum. */
    public double minerCycles() {
        return minerNanocycles / NANOS;
    }

    /** Whole cycles of all ranges. */
    public double cycles() {
        return halfCycles.stream().mapToLong(Long::longValue).sum() / 2.0;
    }

    /** The class of a range: its place in {@link #halfCycles}. */
    static int classOf(double rangeShare) {
        int place = 0;
        while (place < EDGES.size() && rangeShare > EDGES.get(place)) {
            place++;
        }
        return place;
    }

    /** What half a cycle, or a whole one, adds to {@link #minerNanocycles}. */
    static long nanocycles(double rangeShare, int halves) {
        return Math.round(halves / 2.0 * Math.pow(rangeShare, SLOPE) * NANOS);
    }

    /** Both together. @throws IllegalArgumentException if they are of different ropes */
    public RopeUse plus(RopeUse other) {
        if (!gear.equals(other.gear)) {
            throw new IllegalArgumentException("rope " + gear + " and " + other.gear + " are not the same");
        }
        return new RopeUse(
                gear,
                GearUse.sums(halfCycles, other.halfCycles),
                Math.addExact(minerNanocycles, other.minerNanocycles),
                isAtLeast || other.isAtLeast);
    }
}
