package tautlog.logger.publish;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;
import tautlog.config.ConfigException;
import tautlog.detect.Finding;
import tautlog.detect.Second;
import tautlog.recording.OutingStart;
import tautlog.recording.OutingTrail;
import tautlog.recording.Said;
import tautlog.recording.Said.SaidFinding;
import tautlog.recording.Said.SaidSecond;
import tautlog.rig.LineCalibration;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.usage.Hours;

/**
 * Turns what was said of one outing into newtons and UTC, by the rig and the calibration that the recording holds. Feed it everything
 * once, in order: it counts the meters.
 */
final class ItemMaker {
    private static final List<String> BANDS = List.of("to_0.25", "to_0.5", "to_0.75", "to_1", "above_1");
    private static final List<String> KINDS = List.of("pull", "overload", "shock", "jolt", "drop", "stall");

    private final String recording;
    private final OutingTrail outing;
    private final Calibration calibration;
    private final FindingFields fields;
    private final Hours hours;

    private ItemMaker(String recording, OutingTrail outing, Rig rig, OutingStart start) {
        this.recording = recording;
        this.outing = outing;
        calibration = LineCalibration.of(start.calibration().response(), rig);
        fields = new FindingFields(rig, calibration, start.instrument().rate(), outing);
        hours = new Hours(start.instrument(), rig, calibration);
    }

    /** @throws ConfigException if the rig in the recording cannot be read by this version */
    static ItemMaker of(String recording, OutingTrail outing, OutingStart start) throws ConfigException {
        Rig rig = Rig.parse("rig in recording " + recording, start.rigToml());
        return new ItemMaker(recording, outing, rig, start);
    }

    /** Findings first: they matter most. None when no clock is known. */
    List<Item> items(Said said) {
        List<Item> items = new ArrayList<>();
        for (SaidFinding finding : said.findings()) {
            add(finding, items);
        }
        for (SaidSecond second : said.seconds()) {
            outing.utcMicros(second.tick()).ifPresent(at -> items.add(item(second.second(), at)));
        }
        return items;
    }

    /** Counts into the meters what was published before. */
    void countAgain(List<Finding> findings) {
        findings.forEach(hours::finding);
    }

    private void add(SaidFinding said, List<Item> items) {
        Finding finding = said.finding();
        hours.finding(finding);
        OptionalLong start = outing.utcMicros(said.startTick());
        OptionalLong last = outing.utcMicros(said.lastTick());
        if (start.isEmpty() || last.isEmpty()) {
            return;
        }
        String position = position("f", said.id());
        items.add(new Item.OfFinding(
                position,
                outing.index(),
                said.id(),
                start.getAsLong(),
                finding.kind(),
                FindingFields.hookup(finding),
                fields.of(said)));
        if (finding instanceof Finding.Pull) {
            items.add(new Item.OfMeters(position, outing.index(), said.id(), last.getAsLong(), meters().json()));
        }
    }

    /** What findings tell of the hours; the shaft's and the joint's need the shaft's readings, which are not published. */
    private Fields meters() {
        Fields meters = new Fields()
                .number("pull_h", hours.pullHours())
                .number("winching_h", hours.winchingHours())
                .number("held_h", hours.heldHours());
        Fields bands = new Fields();
        for (int band = 0; band < BANDS.size(); band++) {
            bands.number(BANDS.get(band), hours.bandHours(band));
        }
        meters.json().add("band_h", bands.json());
        for (String kind : KINDS) {
            meters.whole(kind + "s", hours.count(kind));
        }
        return meters;
    }

    private Item item(Second second, long utcMicros) {
        return new Item.OfSecond(
                position("s", second.index()),
                outing.index(),
                second.index(),
                utcMicros,
                calibration.newtons(second.least()),
                calibration.meanNewtons(second.countSum(), second.countSquares(), second.samples()),
                calibration.newtons(second.greatest()),
                second.share(),
                second.shaftRpm(),
                second.hookup(),
                second.flags());
    }

    private String position(String stream, long number) {
        return recording + "/" + outing.index() + "/" + stream + "/" + number;
    }
}
