package tautlog.detect;

import tautlog.rig.Rig;
import tautlog.sample.Calibration;

/**
 * Everything that relates one tension to another, asked with counts. Source: {@code FINDINGS.md}, Counting.
 *
 * <p>Under a straight line a difference of tensions is one of counts, so {@link StraightRelations} compares whole numbers that
 * were worked out once. Under a curve {@link CurvedRelations} compares doubles. A detector asks first for bounds, which are
 * counts under both and may be too wide, so that few samples are ever judged.
 */
interface Relations {
    /** @param zeroStretch samples of a stretch of zero drift */
    static Relations of(Calibration calibration, Rig rig, int zeroStretch) {
        return calibration.isStraight()
                ? new StraightRelations(calibration, rig, zeroStretch)
                : new CurvedRelations(calibration, rig, zeroStretch);
    }

    /** Whether means need the sums of squares. */
    boolean areCurved();

    /** T_to − T_from ≥ jolt_rise · R. */
    boolean isJolt(int from, int to);

    /** A count so low that none below it is a jolt from {@code from} or a higher count. */
    long joltsFrom(long from);

    /** Some counts, about a quarter of a jolt: by so much a tension may fall before it need be looked at. */
    long joltMargin();

    /** T_peak − T_neighbour > 0.2 · R. */
    boolean isSpike(int peak, int neighbour);

    /** No two counts from this one to {@link #spikeFreeTo}, with {@code count} between them, are a spike apart. */
    long spikeFreeFrom(int count);

    long spikeFreeTo(int count);

    /** T_to ≤ (1 − drop_by) · T_from. */
    boolean isDrop(int from, int to);

    /** A count so great that no count above it is a drop from {@code from} or from a lower count that is above zero. */
    long dropsTo(int from);

    /** T_peak ≥ shock_factor · S, S given as twice its count. */
    boolean isShockAgainst(int peak, long settledTwice);

    /** T_greatest − T_least ≤ 1 % of R. */
    boolean isSteady(long least, long greatest);

    /** The mean of one stretch of zero drift differs from that of another by more than the drift setting. */
    boolean isDrift(long sum, SquareSum squares, long otherSum, SquareSum otherSquares);

    /** What the rainflow count takes for {@code count}, in the unit of {@link #cycleGate}. */
    double level(int count);

    /** cycle_gate · R. */
    double cycleGate();
}
