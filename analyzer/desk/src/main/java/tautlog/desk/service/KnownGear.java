package tautlog.desk.service;

import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import tautlog.rig.GearKind;
import tautlog.rig.LoadedItem;
import tautlog.service.Machine;

/**
 * Which gear there is on the winches that were recorded.
 *
 * @param kinds of each winch's gear by its id; none of a winch of which no rig was asked or can be read
 * @param isAsked whether rigs were asked at all
 */
public record KnownGear(Map<String, Map<String, GearKind>> kinds, boolean isAsked) {
    public KnownGear {
        kinds = Collections.unmodifiableMap(new LinkedHashMap<>(kinds));
    }

    /** By rigs that were asked; none of a winch whose rig cannot be read. */
    public static KnownGear ofRigs(Map<String, Map<String, GearKind>> kinds) {
        return new KnownGear(kinds, true);
    }

    /** Of these winches, without asking their rigs. */
    public static KnownGear ofWinches(Set<String> winches) {
        return new KnownGear(winches.stream().collect(Collectors.toMap(winch -> winch, winch -> Map.of())), false);
    }

    static KnownGear ofMachines(List<Machine> machines) {
        Map<String, Map<String, GearKind>> kinds = new LinkedHashMap<>();
        for (Machine machine : machines) {
            Map<String, GearKind> gear = new LinkedHashMap<>();
            machine.gear().forEach((id, kept) -> gear.put(id, kept.kind()));
            kinds.put(machine.winch(), gear);
        }
        return ofRigs(kinds);
    }

    Set<String> winches() {
        return kinds.keySet();
    }

    /** Whether the rig of {@code winch}, or of any winch when none is named, is known. */
    boolean isKnown(Optional<String> winch) {
        return winch.map(name -> !kinds.getOrDefault(name, Map.of()).isEmpty())
                .orElse(kinds.values().stream().anyMatch(gear -> !gear.isEmpty()));
    }

    /** Winches whose rig was asked and cannot be read, in order. */
    Set<String> unread() {
        Set<String> unread = new TreeSet<>();
        kinds.forEach((winch, gear) -> {
            if (isAsked && gear.isEmpty()) {
                unread.add(winch);
            }
        });
        return unread;
    }

    /** Gear by its id, of that winch or of all; the load cell is gear of no rig and of any kind. */
    Map<String, GearKind> of(Optional<String> winch) {
        Map<String, GearKind> gear = new HashMap<>(Map.of(LoadedItem.CELL, GearKind.OTHER));
        kinds.forEach((name, own) -> {
            if (winch.map(name::equals).orElse(true)) {
                // one id on two winches that is of two kinds may be either
                own.forEach((id, kind) -> gear.merge(id, kind, (a, b) -> a == b ? a : GearKind.OTHER));
            }
        });
        return gear;
    }

    /** Ids of gear that {@code fits}, in their order. */
    static Set<String> ids(Map<String, GearKind> gear, Predicate<GearKind> fits) {
        Set<String> ids = new TreeSet<>();
        gear.forEach((id, kind) -> {
            if (fits.test(kind) && !id.equals(LoadedItem.CELL)) {
                ids.add(id);
            }
        });
        return ids;
    }
}
