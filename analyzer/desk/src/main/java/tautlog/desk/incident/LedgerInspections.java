package tautlog.desk.incident;

import java.time.Instant;
import java.time.ZoneId;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tautlog.desk.report.JsonReport;
import tautlog.service.Act;
import tautlog.service.Entry;
import tautlog.service.GearPiece;
import tautlog.service.LedgerView;

/** Inspections, and gear taken out of service, as the ledger had them at the moment asked for. */
public final class LedgerInspections implements InspectionLedger {
    private final List<Entry> entries;
    private final long unusable;
    private final ZoneId zone;

    /**
     * @param ledger read as of {@code at}
     * @param winch whose gear it is
     * @param at what was written of later times is left out; nothing is where it is not known
     */
    public LedgerInspections(LedgerView ledger, long unusable, String winch, Optional<Instant> at, ZoneId zone) {
        entries = ledger.of(winch).stream()
                .filter(entry -> at.map(moment -> !entry.at().isAfter(moment)).orElse(true))
                .toList();
        this.unusable = unusable;
        this.zone = zone;
    }

    @Override
    public long unusable() {
        return unusable;
    }

    @Override
    public List<Line> last(String gear) {
        Map<GearPiece, Line> last = new LinkedHashMap<>();
        for (Entry entry : entries) {
            Optional<GearPiece> piece =
                    entry.act().subject().filter(of -> of.gear().equals(gear));
            if (piece.isPresent() && tellsState(entry.act())) {
                last.put(piece.get(), line(entry, piece.get()));
            }
        }
        return List.copyOf(last.values());
    }

    private static boolean tellsState(Act act) {
        return act instanceof Act.Inspected || act instanceof Act.OutOfService || act instanceof Act.Retired;
    }

    private Line line(Entry entry, GearPiece piece) {
        String what = entry.act() instanceof Act.Inspected inspected
                ? "inspected: " + JsonReport.word(inspected.verdict()).replace('-', ' ')
                : entry.act() instanceof Act.Retired ? "retired" : "out of service";
        return new Line(
                entry.at().atZone(zone).toLocalDate().toString(),
                what
                        + piece.piece().map(name -> ", piece " + name).orElse("")
                        + entry.by().map(name -> ", by " + name).orElse(""));
    }
}
