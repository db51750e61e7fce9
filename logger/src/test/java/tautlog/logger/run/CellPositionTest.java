package tautlog.logger.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tautlog.calibration.CellCalibration;
import tautlog.detect.Finding;
import tautlog.logger.LoggerFolder;
import tautlog.logger.ScriptedPort;
import tautlog.logger.SmallInstrument;
import tautlog.logger.StoredOuting;
import tautlog.logger.live.LiveReadings;
import tautlog.logger.run.LoggerRun.Until;
import tautlog.recording.OutingStart;
import tautlog.recording.OutingWriter;
import tautlog.recording.RecordingWriter;
import tautlog.sample.Calibration;

/**
 * A cell at a fairlead with a right angle between the lines carries √2 of the tension (statics: 2 cos 45°). A haul whose cell
 * sees 25 kN is then a tension of 17.68 kN: 88 % of the limit of 20 kN. Taken as it stands it would be 125 %, divided twice
 * 63 %. {@link StoredOuting} replays as the desk does and compares every finding.
 */
@Timeout(60)
class CellPositionTest {
    private static final Calibration OF_THE_CELL = Calibration.of("0", "0.01");

    @TempDir
    Path path;

    private final SmallInstrument instrument = new SmallInstrument(7);
    private LoggerFolder folder;

    @BeforeEach
    void aRigWithACellAtTheFairlead() throws IOException {
        folder = LoggerFolder.at(path, "scripted", LoggerFolder.DEVICE_CLOCK);
        Files.writeString(
                path.resolve("rig.toml"),
                LoggerFolder.RIG.replace(
                        "[[gear]]", "[cell]\nat = \"fairlead\"\nangle_between_lines_deg = 90\n[[gear]]"));
    }

    @Test
    void findsLiveWhatTheDeskFindsAndTakesThePlaceIntoAccountOnce() throws Exception {
        // when
        record(instrument.haul());

        // then
        StoredOuting outing = stored().get(0);
        assertEquals(Set.of("drop", "pull", "shock"), kinds(outing));
        Finding.Pull pull = outing.said().stream()
                .filter(Finding.Pull.class::isInstance)
                .map(Finding.Pull.class::cast)
                .findFirst()
                .orElseThrow();
        assertTrue(pull.bandSamples().get(3) > 0, "the peak is between 75 % and 100 % of the limit");
        assertEquals(0, pull.bandSamples().get(4));
    }

    @Test
    void storesTheCellsOwnCalibration() throws Exception {
        record(instrument.hold(0, 500));

        assertEquals(OF_THE_CELL, stored().get(0).outing().start().calibration().response());
    }

    @Test
    void showsTheLinesTensionOnTheScreen() throws Exception {
        // given: the cell sees 12 kN
        LoggerRun logger = record(instrument.hold(1_200_000, 500));

        // then: the line pulls 8.485 kN, within the 8 counts of noise
        LiveReadings shown = logger.status().outing().orElseThrow();
        assertEquals(12_000 / Math.sqrt(2), shown.tensionNewtons().orElseThrow(), 0.08);
    }

    @Test
    void finishesAnInterruptedOutingAlike() throws Exception {
        // given: cut off in the middle of the haul, nothing said yet
        Files.createDirectories(folder.recordings());
        Path file = folder.recordings().resolve("upper-landing_2026-05-04.tautlog");
        int[] counts =
                instrument.haul().sent().stream().mapToInt(Integer::intValue).toArray();
        try (RecordingWriter writer = RecordingWriter.open(file, "upper-landing")) {
            OutingWriter cut = writer.begin(new OutingStart(
                    instrument.instrument(),
                    Files.readString(path.resolve("rig.toml")),
                    CellCalibration.written(OF_THE_CELL),
                    "tautlogd test",
                    OutingStart.Source.INSTRUMENT));
            for (int k = 0; k < 2_000; k += 25) {
                cut.tension(k, 1_000_000 + 2_000L * k, 0, counts, k, 25);
            }
            cut.commit();
        }

        // when
        record(new SmallInstrument(8).hold(0, 500));

        // then
        StoredOuting cut = stored().get(0);
        assertTrue(cut.outing().closed());
        assertFalse(kinds(cut).contains("overload"));
        assertTrue(kinds(cut).contains("pull"));
    }

    private LoggerRun record(SmallInstrument what) throws Exception {
        LoggerRun logger = new LoggerRun(
                folder.installation(), new ScriptedPort().bring(what.take()).hangUp(), Until.CLOSED, "tautlogd test");
        logger.run();
        return logger;
    }

    private List<StoredOuting> stored() throws IOException {
        return StoredOuting.readAll(StoredOuting.only(folder.recordings()));
    }

    private static Set<String> kinds(StoredOuting outing) {
        return outing.said().stream().map(Finding::kind).collect(Collectors.toSet());
    }
}
