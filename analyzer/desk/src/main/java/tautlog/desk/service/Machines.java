package tautlog.desk.service;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import tautlog.desk.use.OutingUse;
import tautlog.desk.use.UseEvent;
import tautlog.desk.use.UseHistory;
import tautlog.recording.RecordingException;
import tautlog.rig.Gear;
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
        for (OutingUse use : history.outings()) {
            work.computeIfAbsent(use.at().winch(), of -> new ArrayList<>()).add(stint(use));
        }
        boolean isIncomplete = !history.leftOut().isNothing();
        Map<String, Rig> rigs = history.latestRigs();
        List<Machine> machines = new ArrayList<>();
        work.forEach((winch, stints) ->
                machines.add(new Machine(winch, gear(Optional.ofNullable(rigs.get(winch))), stints, isIncomplete)));
        return machines;
    }

    private static Map<String, Machine.Kept> gear(Optional<Rig> rig) {
        Map<String, Machine.Kept> gear = new LinkedHashMap<>();
        for (Gear one : rig.map(Rig::gear).orElse(List.of())) {
            gear.put(one.id(), new Machine.Kept(one.count(), one.fitted()));
        }
        return gear;
    }

    static Stint stint(OutingUse use) {
        Map<String, Amount> gearPulls = new HashMap<>();
        for (GearUse gear : use.machine().gear()) {
            gearPulls.put(gear.gear(), Amount.between((double) gear.pulls(), gear.pulls() + pullsInGaps(use)));
        }
        return new Stint(
                use.start(),
                use.end(),
                amounts(use),
                Optional.of(gearPulls),
                use.events().stream()
                        .map(event -> new Happening(event.kind(), event.start(), gear(use, event)))
                        .toList());
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

    private static Map<Meter, Amount> amounts(OutingUse use) {
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
            amounts.put(Meter.JOINT_H, Amount.between(certain, joint.getAsDouble()));
        }
        return amounts;
    }

    /** How many whole pulls find room in the gaps. */
    private static double pullsInGaps(OutingUse use) {
        return Math.ceil(use.coverage().gaps().hours() * SECONDS_PER_HOUR / LEAST_SECONDS_A_PULL);
    }
}
