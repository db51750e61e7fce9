package tautlog.desk.gear;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tautlog.desk.use.OutingUse;
import tautlog.rig.Gear;
import tautlog.rig.GearKind;
import tautlog.rig.Rig;
import tautlog.service.Ledger;
import tautlog.service.LedgerView;

/**
 * The lives of gear of everything that was recorded.
 *
 * @param winches in the order in which they come in the history
 * @param notes what a reader must know, one sentence each
 */
public record UsedGear(List<GearLives.OfWinch> winches, List<String> notes) {
    public UsedGear {
        winches = List.copyOf(winches);
        notes = List.copyOf(notes);
    }

    /**
     * Puts use, rigs and ledger together.
     *
     * @param rigs the latest of each winch, by its name; one that cannot be read is not among them
     * @param zone in which the rigs' dates are meant
     */
    public static UsedGear of(List<OutingUse> uses, Map<String, Rig> rigs, Ledger ledger, ZoneId zone) {
        Set<String> names = new LinkedHashSet<>();
        uses.forEach(use -> names.add(use.at().winch()));
        LedgerView view = new LedgerView(ledger, names);
        List<GearOuting> outings = uses.stream().map(use -> outing(use, uses)).toList();
        List<GearLives.OfWinch> winches = new ArrayList<>();
        List<String> notes = new ArrayList<>();
        for (String name : names) {
            Optional<Rig> rig = Optional.ofNullable(rigs.get(name));
            if (rig.isEmpty()) {
                notes.add("The latest rig of " + name
                        + " cannot be read: how many pieces there are, and since when, is not known.");
            }
            GearOfWinch gear = rig.map(known -> new GearOfWinch(name, known.gear(), known.driveline()))
                    .orElseGet(() -> new GearOfWinch(name, List.of(), Optional.empty()));
            winches.add(GearLives.of(gear, outings, view.of(name), zone));
        }
        if (!view.ownerless().isEmpty()) {
            notes.add(view.ownerless().size()
                    + " of the ledger's entries do not say of which winch they are: where there are"
                    + " several, they put nothing back into service.");
        }
        return new UsedGear(winches, notes);
    }

    /** The lives of all winches' gear. */
    public List<GearLife> lives() {
        return winches.stream().flatMap(winch -> winch.lives().stream()).toList();
    }

    /** What kind each winch's gear is, by its id, as its latest rig says; none of a winch whose rig cannot be read. */
    public Map<String, Map<String, GearKind>> kinds() {
        Map<String, Map<String, GearKind>> kinds = new LinkedHashMap<>();
        winches.forEach(winch -> kinds.put(
                winch.rig().winch(), winch.rig().gear().stream().collect(Collectors.toMap(Gear::id, Gear::kind))));
        return kinds;
    }

    private static GearOuting outing(OutingUse use, List<OutingUse> uses) {
        Optional<Instant> notAfter = use.end().or(() -> laterStart(use, uses));
        return new GearOuting(use.at().winch(), use.start(), use.end(), notAfter, use.machine());
    }

    /** When the next outing of the same recording began that has a clock: this one was over by then. */
    private static Optional<Instant> laterStart(OutingUse use, List<OutingUse> uses) {
        return uses.stream()
                .filter(other -> other.at().recordingId().equals(use.at().recordingId())
                        && other.at().outing() > use.at().outing())
                .flatMap(other -> other.start().stream())
                .min(Comparator.naturalOrder());
    }
}
