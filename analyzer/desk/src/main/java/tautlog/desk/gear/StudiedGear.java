package tautlog.desk.gear;

import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import tautlog.desk.analysis.Study;
import tautlog.desk.page.Block;
import tautlog.desk.page.Document;
import tautlog.desk.page.OverloadedGear;
import tautlog.desk.page.Screen;
import tautlog.desk.report.GearOut;
import tautlog.recording.RecordingException;
import tautlog.service.Ledger;
import tautlog.service.LedgerView;
import tautlog.usage.MachineMeter;

/** The gear of a report's own outings, held against the ledger: what is out of service as far as these recordings and the ledger tell. */
public final class StudiedGear {
    private static final String HOW_FAR =
            "This is what the recordings of this report and the ledger tell; an overload in another recording is not known here"
                    + " (tautlog service gear reads them all).";

    private final List<GearLife> lives;
    private final boolean severalWinches;
    private final String ledger;

    private StudiedGear(List<GearLife> lives, boolean severalWinches, String ledger) {
        this.lives = lives;
        this.severalWinches = severalWinches;
        this.ledger = ledger;
    }

    /**
     * Reads the lives out of findings that are there already.
     *
     * @param studies as on the day, not WHAT IF
     * @param name of the ledger
     * @param zone in which the rigs' dates are meant
     */
    public static StudiedGear of(List<Study> studies, Ledger ledger, String name, ZoneId zone)
            throws RecordingException {
        Map<String, GearOfWinch> rigs = new LinkedHashMap<>();
        List<GearOuting> outings = new ArrayList<>();
        for (Study study : studies) {
            String winch = study.member().winch();
            rigs.put(
                    winch,
                    new GearOfWinch(winch, study.rig().gear(), study.rig().driveline()));
            outings.add(outing(study));
        }
        LedgerView view = new LedgerView(ledger, rigs.keySet());
        List<GearLife> lives = rigs.values().stream()
                .flatMap(rig -> GearLives.of(rig, outings, view.of(rig.winch()), zone).lives().stream())
                .toList();
        return new StudiedGear(lives, rigs.size() > 1, name);
    }

    private static GearOuting outing(Study study) throws RecordingException {
        MachineMeter meter =
                new MachineMeter(study.member().outing().start().instrument(), study.rig(), study.calibration());
        study.findings().forEach(meter::finding);
        Optional<Instant> start = study.times().utc(study.member().outing().firstTick());
        Optional<Instant> end = study.times().utc(study.member().outing().lastTick());
        try {
            return new GearOuting(
                    study.member().winch(), start, end, meter.useWithoutReadings(number -> micros(study, number)));
        } catch (UncheckedIOException e) {
            throw (RecordingException) e.getCause();
        }
    }

    private static OptionalLong micros(Study study, long number) {
        try {
            return study.times()
                    .ofNumber(number)
                    .utc()
                    .map(at -> OptionalLong.of(at.getEpochSecond() * 1_000_000 + at.getNano() / 1_000))
                    .orElse(OptionalLong.empty());
        } catch (RecordingException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** For programs. */
    public List<GearOut> out() {
        return lives.stream().flatMap(GearLife::outForPrograms).toList();
    }

    /** A section of the report. */
    public Document.Section section(Screen screen) {
        List<Block> blocks = new ArrayList<>(new OutOfService(lives, screen, severalWinches).blocks());
        blocks.add(new Block.Paragraph("Ledger: " + ledger + ". " + HOW_FAR));
        return new Document.Section(OverloadedGear.HEADING, blocks);
    }
}
