package tautlog.desk.service;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import tautlog.desk.use.OutingUse;
import tautlog.desk.use.UseEvent;
import tautlog.desk.use.UseHistory;
import tautlog.recording.RecordingException;
import tautlog.rig.Gear;
import tautlog.rig.LoadedItem;
import tautlog.rig.Rig;
import tautlog.service.Amount;
import tautlog.service.Happening;
import tautlog.service.Machine;
import tautlog.service.Meter;
import tautlog.service.Stint;
import tautlog.usage.GearUse;

/** Turns what outings used into what machines worked. */
public final class Machines {
    private static final double SECONDS_PER_HOUR = 3_600;
    /** FINDINGS.md, Pull: none is shorter than 0.3 s, and 3 s of slack lie between two, by the default settings. */
    private static final double LEAST_SECONDS_A_PULL = 3.3;

    private Machines() {}

    /**
     * One machine for each winch, its gear by its latest rig.
     *
     * @throws RecordingException if the rig of a recording cannot be read any more
     */
    public static List<Machine> of(UseHistory history) throws RecordingException {
        Map<String, List<Stint>> work = new LinkedHashMap<>();
        boolean isIncomplete = !history.leftOut().isNothing();
        Map<String, Rig> rigs = history.latestRigs();
        for (OutingUse use : history.outings()) {
            String winch = use.at().winch();
            work.computeIfAbsent(winch, of -> new ArrayList<>()).add(stint(use, Optional.ofNullable(rigs.get(winch))));
        }
        List<Machine> machines = new ArrayList<>();
        work.forEach((winch, stints) ->
                machines.add(new Machine(winch, gear(Optional.ofNullable(rigs.get(winch))), stints, isIncomplete)));
        return machines;
    }

    private static Map<String, Machine.Kept> gear(Optional<Rig> rig) {
        Map<String, Machine.Kept> gear = new LinkedHashMap<>();
        for (Gear one : rig.map(Rig::gear).orElse(List.of())) {
            gear.put(one.id(), new Machine.Kept(one.kind(), one.count(), one.fitted()));
        }
        return gear;
    }

    /** @param rig of the winch, the latest; empty when this program cannot read it */
    static Stint stint(OutingUse use, Optional<Rig> rig) {
        return new Stint(
                use.start(),
                use.end(),
                amounts(use, rig.map(Machines::jointRate).orElse(OptionalDouble.empty())),
                Optional.of(gearPulls(use, rig)),
                use.events().stream()
                        .map(event -> new Happening(event.kind(), event.start(), gear(use, event)))
                        .toList());
    }

    /** Pulls under a hookup that nobody had said was on may have been pulls of gear of any other. */
    private static Map<String, Amount> gearPulls(OutingUse use, Optional<Rig> rig) {
        long assumed = use.machine().gear().stream()
                .mapToLong(GearUse::assumedPulls)
                .max()
                .orElse(0);
        Map<String, Amount> pulls = new HashMap<>();
        Stream.concat(
                        use.machine().gear().stream().map(GearUse::gear),
                        rig.stream().flatMap(Machines::inHookups))
                .map(use.machine()::ofGear)
                .forEach(gear -> pulls.put(
                        gear.gear(),
                        Amount.between(
                                (double) gear.pulls(),
                                gear.pulls() + assumed - gear.assumedPulls() + pullsInGaps(use))));
        return pulls;
    }

    private static Stream<String> inHookups(Rig rig) {
        return rig.hookups().stream().flatMap(hookup -> hookup.items().stream()).map(LoadedItem::gear);
    }

    /** Gear that an overload found past its load; gear that was in use at some shock of the outing; of the rest it cannot be told. */
    private static List<String> gear(OutingUse use, UseEvent event) {
        return use.machine().gear().stream()
                .filter(gear -> switch (event.kind()) {
                    case "overload" -> gear.events().stream().anyMatch(one -> one.number() == event.number());
                    case "shock" -> gear.shocks() > 0;
                    default -> false;
                })
                .map(GearUse::gear)
                .toList();
    }

    private static Map<Meter, Amount> amounts(OutingUse use, OptionalDouble jointRate) {
        double gaps = use.coverage().gaps().hours();
        double shaft = use.meters().shaftHours().orElse(0);
        double pull = use.meters().pullHours();
        double pulls = use.meters().count("pull");
        Map<Meter, Amount> amounts = new HashMap<>();
        amounts.put(
                Meter.SHAFT_H,
                Amount.between(shaft, shaft + use.coverage().withoutShaft().hours()));
        amounts.put(Meter.PULL_H, Amount.between(pull, pull + gaps));
        amounts.put(Meter.PULLS, Amount.between(pulls, pulls + pullsInGaps(use)));
        OptionalDouble joint = use.meters().jointHours();
        if (joint.isPresent()) {
            double certain = use.meters().jointHoursAreAtMost() ? 0 : joint.getAsDouble();
            double unseen = use.coverage().withoutShaft().hours() * jointRate.orElse(Double.POSITIVE_INFINITY);
            amounts.put(
                    Meter.JOINT_H,
                    Double.isFinite(unseen)
                            ? Amount.between(certain, joint.getAsDouble() + unseen)
                            : Amount.atLeast(certain));
        }
        return amounts;
    }

    /** Hours of the joint in an hour of which no shaft reading speaks: the rated pull at the rated speed stands for it. */
    private static OptionalDouble jointRate(Rig rig) {
        return rig.driveline()
                .map(line -> line.jointWear(
                        line.greatestShaftTorque(rig.ratedPullNewtons().doubleValue()), line.ratedRpm()))
                .orElse(OptionalDouble.empty());
    }

    /** How many whole pulls find room in the gaps. */
    private static double pullsInGaps(OutingUse use) {
        return Math.ceil(use.coverage().gaps().hours() * SECONDS_PER_HOUR / LEAST_SECONDS_A_PULL);
    }
}
