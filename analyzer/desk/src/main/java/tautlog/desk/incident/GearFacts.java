package tautlog.desk.incident;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import tautlog.desk.report.ItemLoad;
import tautlog.rig.Gear;
import tautlog.rig.Rating;
import tautlog.rig.Rig;

/**
 * What is written about a piece of gear that was in the line.
 *
 * @param count how many identical pieces there are: which of them was on is not known
 * @param workingLoadLimitFrom where its working load limit comes from; empty when it has none
 * @param lastInspection as the rig says
 * @param ledger the last line of the ledger about each piece; empty when none was read, or it says nothing of this gear
 * @param outOfService why it must not be used; empty when nothing says so
 */
public record GearFacts(
        String id,
        String description,
        int count,
        Optional<String> serial,
        Optional<String> workingLoadLimitFrom,
        Optional<LocalDate> fitted,
        Optional<LocalDate> lastInspection,
        List<InspectionLedger.Line> ledger,
        Optional<String> outOfService) {
    /** Of each piece among {@code items} that the rig describes, once. */
    static List<GearFacts> of(List<ItemLoad> items, Rig rig, InspectionLedger ledger) {
        List<String> ids = items.stream().map(ItemLoad::gear).distinct().toList();
        return rig.gear().stream()
                .filter(gear -> ids.contains(gear.id()))
                .map(gear -> of(gear, ledger))
                .toList();
    }

    private static GearFacts of(Gear gear, InspectionLedger ledger) {
        return new GearFacts(
                gear.id(),
                gear.description(),
                gear.count(),
                gear.serial(),
                gear.rating().map(Rating::source),
                gear.fitted(),
                gear.lastInspection(),
                ledger.last(gear.id()),
                gear.outOfService());
    }
}
