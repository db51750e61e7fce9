package tautlog.usage;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.BinaryOperator;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * What gear, rope and driveline of one winch have borne in one outing, or in many added up.
 *
 * @param gear one for each id, in the order of the ids; gear that was in no hookup in force is not here
 * @param ropes the winch's lines, in the order of their ids
 */
public record MachineUse(List<GearUse> gear, List<RopeUse> ropes, DrivelineUse driveline) {
    public static final MachineUse NONE = new MachineUse(List.of(), List.of(), DrivelineUse.NONE);

    public MachineUse {
        gear = gear.stream().sorted(Comparator.comparing(GearUse::gear)).toList();
        ropes = ropes.stream().sorted(Comparator.comparing(RopeUse::gear)).toList();
    }

    /** Of the gear with this id; {@link GearUse#none} when it was not used. */
    public GearUse ofGear(String id) {
        return gear.stream().filter(use -> use.gear().equals(id)).findFirst().orElseGet(() -> GearUse.none(id));
    }

    /** Of the winch's line with this id; {@link RopeUse#none} when it was not used. */
    public RopeUse ofRope(String id) {
        return ropes.stream().filter(use -> use.gear().equals(id)).findFirst().orElseGet(() -> RopeUse.none(id));
    }

    /** The same, with all that {@code whole}, of which this is a part, tells of loads and overloads of gear. */
    public MachineUse withLoadsOf(MachineUse whole) {
        List<GearUse> loaded = whole.gear.stream()
                .map(use -> ofGear(use.gear()).withLoadsOf(use))
                .toList();
        return new MachineUse(loaded, ropes, driveline);
    }

    public MachineUse plus(MachineUse other) {
        return new MachineUse(
                merged(gear, other.gear, GearUse::gear, GearUse::plus),
                merged(ropes, other.ropes, RopeUse::gear, RopeUse::plus),
                driveline.plus(other.driveline));
    }

    private static <T> List<T> merged(List<T> one, List<T> other, Function<T, String> id, BinaryOperator<T> plus) {
        Map<String, T> byId = new TreeMap<>();
        Stream.concat(one.stream(), other.stream()).forEach(use -> byId.merge(id.apply(use), use, plus));
        return List.copyOf(byId.values());
    }
}
