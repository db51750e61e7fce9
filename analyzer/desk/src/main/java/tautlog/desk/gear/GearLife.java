package tautlog.desk.gear;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import tautlog.desk.report.GearOut;
import tautlog.rig.Gear;
import tautlog.service.Entry;
import tautlog.usage.GearUse;
import tautlog.usage.RopeUse;

/**
 * What one piece of gear, or several identical ones together, did and where it stands.
 *
 * @param gear as the winch's latest rig describes it; empty when it is not in that rig, as the load cell
 * @param since what it carried since it was fitted; all that was recorded when nobody says when
 * @param fitted when, by ledger or rig; empty when neither says: what it carried before the first recording is not known
 * @param recorded what was carried under this id in all recordings
 * @param ropes cycles since it was fitted, when it is a winch's line
 * @param pieces those that the crew told apart, then the rest
 * @param loads all overloads under this id, in the order of time, undated ones last
 * @param inspections of the ledger, in the order of time
 * @param notes what a reader must know, whole sentences
 */
public record GearLife(
        String winch,
        String id,
        Optional<Gear> gear,
        GearUse since,
        Optional<Instant> fitted,
        GearUse recorded,
        Optional<RopeUse> ropes,
        List<Piece> pieces,
        List<GearLoad> loads,
        List<Entry> inspections,
        List<String> notes) {
    public GearLife {
        pieces = List.copyOf(pieces);
        loads = List.copyOf(loads);
        inspections = List.copyOf(inspections);
        notes = List.copyOf(notes);
    }

    /** Pieces that nobody may use. */
    public Stream<Piece> out() {
        return pieces.stream().filter(piece -> piece.standing().isOut());
    }

    /** The same for programs. */
    public Stream<GearOut> outForPrograms() {
        return out().map(piece -> new GearOut(
                winch,
                id,
                piece.name(),
                piece.count(),
                piece.standing().word(),
                piece.worst(),
                (int) piece.open().stream()
                        .filter(load -> !load.event().onlyMayBe())
                        .count(),
                piece.reasons()));
    }

    /** Pieces that may have been overloaded. */
    public Stream<Piece> toInspect() {
        return pieces.stream().filter(piece -> piece.standing() == Standing.INSPECT);
    }

    /** {@code choker}, or with its winch where there are several. */
    public String name(boolean withWinch) {
        return withWinch ? winch + ": " + id : id;
    }
}
