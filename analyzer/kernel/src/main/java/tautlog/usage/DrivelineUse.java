package tautlog.usage;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What the shaft that drives the winch has borne. Source: {@code FINDINGS.md}, Driveline. Times are between two shaft readings, at most
 * 1 s each, in nanoseconds; exact, and the same in whatever order outings are added.
 *
 * <p>The layer on which the rope runs is not measured: every figure stands for the first layer and for the last, and the truth lies
 * between. All time of the turning shaft is in one of {@code engaged}, {@code clutchUnknown}, {@code disengaged} and {@code tensionUnknown}.
 *
 * @param outings whose rig describes drum and shaft
 * @param outingsNotDescribed whose rig does not, or whose readings are gone: in none of the figures
 * @param firstLayer time by torque and speed, clutch engaged or unknown, rope on the first layer
 * @param lastLayer the same on the last
 * @param engagedNanos the clutch was known to be engaged
 * @param clutchUnknownNanos nobody knows: the torque is at most that of these cells
 * @param disengagedNanos the clutch was known not to be engaged: no torque
 * @param tensionUnknownNanos the shaft turned and may have been loaded, the tension is not known
 * @param stillNanos the shaft stood (below 60 rpm): no torque is worked out, as the brake may hold the line
 * @param torqueNewtonMetres the greatest
 * @param powerKilowatts the greatest
 * @param aboveRatingLeastNanos torque above the rating for sure: first layer, clutch known to be engaged
 * @param aboveRatingMostNanos above the rating at most: last layer, clutch engaged or unknown, and all time of unknown tension
 */
public record DrivelineUse(
        long outings,
        long outingsNotDescribed,
        List<TorqueSpeedCell> firstLayer,
        List<TorqueSpeedCell> lastLayer,
        long engagedNanos,
        long clutchUnknownNanos,
        long disengagedNanos,
        long tensionUnknownNanos,
        long stillNanos,
        Extent torqueNewtonMetres,
        Extent powerKilowatts,
        long aboveRatingLeastNanos,
        long aboveRatingMostNanos) {
    /** Of no outing. */
    public static final DrivelineUse NONE = empty(0, 0);

    /** Of one outing of which nothing can be said. */
    public static final DrivelineUse NOT_DESCRIBED = empty(0, 1);

    private static final Comparator<TorqueSpeedCell> ORDER =
            Comparator.comparing(TorqueSpeedCell::torqueTenths).thenComparing(TorqueSpeedCell::speedTenths);

    public DrivelineUse {
        firstLayer = List.copyOf(firstLayer);
        lastLayer = List.copyOf(lastLayer);
    }

    private static DrivelineUse empty(long outings, long outingsNotDescribed) {
        return new DrivelineUse(
                outings, outingsNotDescribed, List.of(), List.of(), 0, 0, 0, 0, 0, Extent.NONE, Extent.NONE, 0, 0);
    }

    /** Time with the shaft at 60 rpm or more. */
    public long turningNanos() {
        return engagedNanos + clutchUnknownNanos + disengagedNanos + tensionUnknownNanos;
    }

    public DrivelineUse plus(DrivelineUse other) {
        return new DrivelineUse(
                outings + other.outings,
                outingsNotDescribed + other.outingsNotDescribed,
                cells(firstLayer, other.firstLayer),
                cells(lastLayer, other.lastLayer),
                engagedNanos + other.engagedNanos,
                clutchUnknownNanos + other.clutchUnknownNanos,
                disengagedNanos + other.disengagedNanos,
                tensionUnknownNanos + other.tensionUnknownNanos,
                stillNanos + other.stillNanos,
                torqueNewtonMetres.or(other.torqueNewtonMetres),
                powerKilowatts.or(other.powerKilowatts),
                aboveRatingLeastNanos + other.aboveRatingLeastNanos,
                aboveRatingMostNanos + other.aboveRatingMostNanos);
    }

    private static List<TorqueSpeedCell> cells(List<TorqueSpeedCell> one, List<TorqueSpeedCell> other) {
        List<TorqueSpeedCell> all = new ArrayList<>(one);
        all.addAll(other);
        return merged(all);
    }

    /** One cell for each torque and speed, in their order. */
    static List<TorqueSpeedCell> merged(List<TorqueSpeedCell> cells) {
        Map<TorqueSpeedCell, Long> nanos = new TreeMap<>(ORDER);
        cells.forEach(cell -> nanos.merge(cell, cell.nanos(), Math::addExact));
        return nanos.entrySet().stream()
                .map(cell -> new TorqueSpeedCell(
                        cell.getKey().torqueTenths(), cell.getKey().speedTenths(), cell.getValue()))
                .toList();
    }
}
