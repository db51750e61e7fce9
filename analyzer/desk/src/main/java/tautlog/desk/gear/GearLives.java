package tautlog.desk.gear;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Stream;
import tautlog.rig.Gear;
import tautlog.rig.LoadedItem;
import tautlog.service.Act;
import tautlog.service.Entry;
import tautlog.service.GearPiece;
import tautlog.usage.DrivelineUse;
import tautlog.usage.GearUse;
import tautlog.usage.MachineUse;
import tautlog.usage.RopeUse;

/** Puts outings, rig and ledger of one winch together into the lives of its gear. */
public final class GearLives {
    private static final Comparator<GearLoad> IN_TIME =
            Comparator.comparing(load -> load.at().orElse(Instant.MAX));

    private final GearOfWinch rig;
    private final List<GearOuting> outings;
    private final List<Entry> entries;
    private final ZoneId zone;

    private GearLives(GearOfWinch rig, List<GearOuting> outings, List<Entry> entries, ZoneId zone) {
        this.rig = rig;
        this.outings = outings;
        this.entries = entries;
        this.zone = zone;
    }

    /**
     * Everything of one winch.
     *
     * @param lives gear of the rig in its order, then what is not in it any more
     */
    public record OfWinch(GearOfWinch rig, List<GearLife> lives, DrivelineUse driveline) {
        public OfWinch {
            lives = List.copyOf(lives);
        }
    }

    /**
     * The lives of a winch's gear.
     *
     * @param rig of the winch, the latest
     * @param outings of this winch; others are left out
     * @param entries of the ledger that count for this winch
     * @param zone in which the rig's dates are meant
     */
    public static OfWinch of(GearOfWinch rig, List<GearOuting> outings, List<Entry> entries, ZoneId zone) {
        List<GearOuting> own = outings.stream()
                .filter(outing -> outing.winch().equals(rig.winch()))
                .toList();
        GearLives lives = new GearLives(rig, own, entries, zone);
        DrivelineUse driveline =
                own.stream().map(outing -> outing.use().driveline()).reduce(DrivelineUse.NONE, DrivelineUse::plus);
        return new OfWinch(rig, lives.ids().map(lives::life).toList(), driveline);
    }

    private Stream<String> ids() {
        List<String> inRig = rig.gear().stream().map(Gear::id).toList();
        TreeSet<String> others = new TreeSet<>();
        outings.forEach(outing -> outing.use().gear().forEach(use -> others.add(use.gear())));
        entries.forEach(entry -> entry.act().subject().ifPresent(piece -> others.add(piece.gear())));
        inRig.forEach(others::remove);
        return Stream.concat(inRig.stream(), others.stream());
    }

    private GearLife life(String id) {
        Optional<Gear> gear =
                rig.gear().stream().filter(one -> one.id().equals(id)).findFirst();
        List<Entry> own = entries.stream()
                .filter(entry -> entry.act()
                        .subject()
                        .filter(piece -> piece.gear().equals(id))
                        .isPresent())
                .toList();
        Optional<Instant> fitted = fitted(gear, own);
        List<GearOuting> since = outings.stream()
                .filter(outing -> fitted.isEmpty()
                        || outing.notAfter()
                                .map(end -> !end.isBefore(fitted.get()))
                                .orElse(true))
                .toList();
        GearUse all = use(id, outings);
        return new GearLife(
                rig.winch(),
                id,
                gear,
                since.size() == outings.size() ? all : use(id, since),
                fitted,
                all,
                rope(id, since),
                pieces(id, gear, own),
                loads(id),
                own.stream()
                        .filter(entry -> entry.act() instanceof Act.Inspected)
                        .toList(),
                notes(id, gear, own));
    }

    /** Of all identical pieces at once: by an entry that names none, or by the rig. */
    private Optional<Instant> fitted(Optional<Gear> gear, List<Entry> own) {
        Optional<Instant> written = own.stream()
                .filter(entry -> entry.act() instanceof Act.Fitted
                        && entry.putsIntoService()
                        && name(entry).isEmpty())
                .map(Entry::at)
                .max(Comparator.naturalOrder());
        return Stream.concat(written.stream(), fittedByRig(gear).stream()).max(Comparator.naturalOrder());
    }

    /** The day's beginning: what was carried on that day counts for it. */
    private Optional<Instant> fittedByRig(Optional<Gear> gear) {
        return gear.flatMap(Gear::fitted).map(day -> day.atStartOfDay(zone).toInstant());
    }

    private static GearUse use(String id, List<GearOuting> outings) {
        return GearUse.sum(
                id, outings.stream().map(outing -> outing.use().ofGear(id)).toList());
    }

    private static Optional<RopeUse> rope(String id, List<GearOuting> outings) {
        return outings.stream()
                .map(GearOuting::use)
                .map(MachineUse::ropes)
                .flatMap(List::stream)
                .filter(use -> use.gear().equals(id))
                .reduce(RopeUse::plus);
    }

    private List<GearLoad> loads(String id) {
        List<GearLoad> loads = new ArrayList<>();
        outings.forEach(
                outing -> outing.use().ofGear(id).events().forEach(event -> loads.add(GearLoad.of(event, outing))));
        loads.sort(IN_TIME);
        return loads;
    }

    private List<Piece> pieces(String id, Optional<Gear> gear, List<Entry> own) {
        List<Piece> pieces = new ArrayList<>();
        for (String name : names(own)) {
            List<Entry> ofPiece = own.stream()
                    .filter(entry -> name(entry).map(name::equals).orElse(true))
                    .toList();
            pieces.add(judge(id, gear, ofPiece).judge(Optional.of(name), 1));
        }
        long known = pieces.stream()
                .filter(piece -> piece.standing() != Standing.RETIRED)
                .count();
        int rest = (int) Math.max(0, gear.map(Gear::count).orElse(1) - known);
        if (rest > 0) {
            List<Entry> ofAll =
                    own.stream().filter(entry -> name(entry).isEmpty()).toList();
            pieces.add(judge(id, gear, ofAll).judge(Optional.empty(), rest));
        }
        return pieces;
    }

    private PieceJudge judge(String id, Optional<Gear> gear, List<Entry> entries) {
        return new PieceJudge(loads(id), entries, fittedByRig(gear), gear.flatMap(Gear::outOfService), zone);
    }

    /** Names are the same whatever their case. */
    private static List<String> names(List<Entry> own) {
        return own.stream()
                .flatMap(entry -> name(entry).stream())
                .distinct()
                .sorted()
                .toList();
    }

    private static Optional<String> name(Entry entry) {
        return entry.act()
                .subject()
                .flatMap(GearPiece::piece)
                .map(name -> name.strip().toLowerCase(Locale.ROOT))
                .filter(name -> !name.isEmpty());
    }

    private List<String> notes(String id, Optional<Gear> gear, List<Entry> own) {
        List<String> notes = new ArrayList<>();
        if (gear.isEmpty() && !id.equals(LoadedItem.CELL)) {
            notes.add("It is not in the winch's latest rig: how many pieces there are is not known, one is shown.");
        }
        int count = gear.map(Gear::count).orElse(1);
        int named = names(own).size();
        if (named > count) {
            notes.add("The ledger names " + named + " pieces, the rig has " + count + ".");
        }
        if (own.stream().anyMatch(entry -> entry.act() instanceof Act.Inspected && !entry.isNamed())) {
            notes.add("An inspection without a name under it puts nothing back into service.");
        }
        gear.flatMap(Gear::lastInspection)
                .ifPresent(day -> notes.add("The rig says that it was inspected on " + day
                        + "; without a name in the ledger that puts nothing back into service."));
        return notes;
    }
}
