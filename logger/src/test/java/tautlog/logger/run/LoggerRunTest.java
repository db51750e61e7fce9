package tautlog.logger.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tautlog.config.ConfigException;
import tautlog.detect.Finding;
import tautlog.logger.LoggerFolder;
import tautlog.logger.ScriptedPort;
import tautlog.logger.SmallInstrument;
import tautlog.logger.StoredOuting;
import tautlog.logger.control.ControlClient;
import tautlog.logger.control.MarkAnswer;
import tautlog.logger.instrument.Hearing;
import tautlog.logger.run.LoggerRun.Until;
import tautlog.logger.wire.BeaconDecoder;
import tautlog.logger.wire.BeaconSink;
import tautlog.logger.wire.BeaconState;
import tautlog.logger.wire.FrameFault;
import tautlog.recording.OutingStart;
import tautlog.recording.OutingWriter;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;
import tautlog.recording.RecordingWriter;

@Timeout(60)
class LoggerRunTest {
    @TempDir
    Path path;

    private final ScriptedPort port = new ScriptedPort();
    private final SmallInstrument instrument = new SmallInstrument(7);

    @Test
    void recordsEveryCountAndEndsWhenTheOtherEndCloses() throws Exception {
        // given
        LoggerFolder folder = LoggerFolder.at(path, "scripted", LoggerFolder.DEVICE_CLOCK);
        port.bring(instrument.haul().haul().take()).hangUp();

        // when
        new LoggerRun(folder.installation(), port, Until.CLOSED, "tautlogd test").run();

        // then
        Path file = StoredOuting.only(folder.recordings());
        assertEquals("upper-landing_2026-05-04.tautlog", file.getFileName().toString());
        StoredOuting outing = StoredOuting.readAll(file).get(0);
        assertTrue(outing.outing().ended());
        assertEquals(instrument.sent(), outing.counts());
        assertEquals(List.of("hookup 0 straight DEFAULT"), outing.of("hookup"));
        assertEquals(List.of("clock 1000000 1777878000000000"), outing.of("clock"), "2026-05-04T07:00:00Z");
    }

    @Test
    void saysLiveWhatAReplayFinds() throws Exception {
        // given
        LoggerFolder folder = LoggerFolder.at(path, "scripted", LoggerFolder.DEVICE_CLOCK);
        port.bring(instrument.haul().take()).hangUp();

        // when
        new LoggerRun(folder.installation(), port, Until.CLOSED, "tautlogd test").run();

        // then: StoredOuting compares the two, field by field
        StoredOuting outing =
                StoredOuting.readAll(StoredOuting.only(folder.recordings())).get(0);
        assertEquals(
                List.of("drop", "overload", "pull", "shock"),
                outing.said().stream().map(Finding::kind).distinct().sorted().toList());
        assertEquals(8, outing.seconds().size());
    }

    @Test
    void putsASecondRunOfTheDayIntoTheSameFileAsANewOuting() throws Exception {
        // given
        LoggerFolder folder = LoggerFolder.at(path, "scripted", LoggerFolder.DEVICE_CLOCK);
        port.bring(instrument.hold(0, 500).take()).hangUp();
        new LoggerRun(folder.installation(), port, Until.CLOSED, "tautlogd test").run();

        // when
        port.bring(new SmallInstrument(8).hold(5, 1_000).take()).hangUp();
        new LoggerRun(folder.installation(), port, Until.CLOSED, "tautlogd test").run();

        // then
        List<StoredOuting> outings = StoredOuting.readAll(StoredOuting.only(folder.recordings()));
        assertEquals(
                List.of(500L, 1_000L),
                outings.stream().map(o -> o.outing().samples()).toList());
    }

    @Test
    void takesTheHookupFromTheSelectorWhenItIsTurned() throws Exception {
        // given: no word, then position 2, then a position that no hookup has
        LoggerFolder folder = LoggerFolder.at(path, "scripted", LoggerFolder.DEVICE_CLOCK);
        instrument.hold(0, 500).selector(2).hold(0, 500).selector(9).hold(0, 500);
        port.bring(instrument.take()).hangUp();

        // when
        new LoggerRun(folder.installation(), port, Until.CLOSED, "tautlogd test").run();

        // then
        StoredOuting outing =
                StoredOuting.readAll(StoredOuting.only(folder.recordings())).get(0);
        assertEquals(
                List.of("hookup 0 straight DEFAULT", "hookup 500 choked SELECTOR", "hookup 1000 straight DEFAULT"),
                outing.of("hookup"));
    }

    @Test
    void showsOverOnTheBeaconWhileTheLineIsAboveTheLimit() throws Exception {
        // given
        Started run = start(Until.STOPPED);
        run.await("a first frame", () -> !beacons().isEmpty());

        // when: 25 kN on a limit of 20 kN
        port.bring(instrument.hold(2_500_000, 50).take());

        // then
        run.await("over on the line", () -> beacons().contains(BeaconState.OVER));
        assertEquals(BeaconState.FAULT, beacons().get(0), "before anything is known");
        run.stop();
    }

    private List<BeaconState> beacons() {
        List<BeaconState> states = new ArrayList<>();
        byte[] written = port.written();
        new BeaconDecoder().feed(written, 0, written.length, new BeaconSink() {
            @Override
            public void beacon(int seq, BeaconState state) {
                assertEquals(states.size() & 0xff, seq);
                states.add(state);
            }

            @Override
            public void rejected(FrameFault fault) {
                throw new AssertionError(fault);
            }
        });
        return states;
    }

    @Test
    void notesMarksAtTheNextSampleAndAnswersStatus() throws Exception {
        // given
        Started run = start(Until.STOPPED);
        port.bring(instrument.hold(0, 500).take());
        ControlClient client = new ControlClient(run.folder.recordings());
        run.await("500 samples", () -> samples(client) == 500);

        // when
        Optional<MarkAnswer> hookup = client.mark(Optional.of("choked"), Optional.empty());
        Optional<MarkAnswer> wrong = client.mark(Optional.of("choke"), Optional.empty());
        Optional<MarkAnswer> note = client.mark(Optional.empty(), Optional.of("first log"));
        port.bring(instrument.hold(0, 500).take());
        run.await("1000 samples", () -> samples(client) == 1_000);
        JsonObject status = client.status().orElseThrow();
        run.stop();

        // then
        assertEquals(Optional.of(500L), hookup.orElseThrow().atNumber());
        assertEquals(Optional.of(500L), note.orElseThrow().atNumber());
        assertFalse(wrong.orElseThrow().accepted());
        assertTrue(wrong.orElseThrow().words().contains("Did you mean choked?"));
        assertTrue(status.get("running").getAsBoolean());
        assertEquals("choked", status.getAsJsonObject("outing").get("hookup").getAsString());
        assertEquals(0, status.getAsJsonObject("disk").get("lost_samples").getAsInt());
        StoredOuting outing =
                StoredOuting.readAll(StoredOuting.only(run.folder.recordings())).get(0);
        assertEquals(List.of("hookup 0 straight DEFAULT", "hookup 500 choked MARK"), outing.of("hookup"));
        assertEquals(List.of("mark 500 first log"), outing.of("mark"));
        assertEquals(Optional.empty(), client.status(), "the logger has stopped");
    }

    private static long samples(ControlClient client) {
        try {
            JsonObject status = client.status().orElse(new JsonObject());
            return status.has("outing") && status.get("outing").isJsonObject()
                    ? status.getAsJsonObject("outing").get("samples").getAsLong()
                    : 0;
        } catch (IOException notYet) {
            return 0;
        }
    }

    @Test
    void saysOfGarbageThatItIsNotUnderstoodAndRecordsNothingOfIt() throws Exception {
        // given: a line at the wrong baud, a piece every tenth of a second
        Started run = start(Until.STOPPED);
        byte[] garbage = instrument.hold(0, 500).take();
        for (int i = 0; i < garbage.length; i++) {
            garbage[i] = (byte) (garbage[i] == 0 ? 0 : garbage[i] ^ 0x5a | 1);
        }

        // when
        run.await("the word", () -> {
            port.bring(garbage);
            return run.logger.status().hearing() == Hearing.State.NOT_UNDERSTOOD;
        });

        // then
        assertEquals("fault", run.logger.status().beacon());
        assertEquals(Optional.empty(), run.logger.recording());
        assertTrue(run.logger.status().line().tally().rejectedFrames() > 0);
        run.stop();
    }

    @Test
    void mixesNoTwoInstrumentsThatClaimOneId() throws Exception {
        // given: seconds of one and of the other over one line
        LoggerFolder folder = LoggerFolder.at(path, "scripted", LoggerFolder.DEVICE_CLOCK);
        SmallInstrument other = new SmallInstrument(8);
        port.bring(instrument.hold(0, 500).take())
                .bring(other.hold(900_000, 500).take());
        List<Integer> first = List.copyOf(instrument.sent());
        List<Integer> second = List.copyOf(other.sent());
        for (int k = 0; k < 5; k++) {
            port.bring(instrument.hold(0, 500).take())
                    .bring(other.hold(900_000, 500).take());
        }
        port.hangUp();

        // when
        new LoggerRun(folder.installation(), port, Until.CLOSED, "tautlogd test").run();

        // then: each stands alone, and the mark says why nothing follows
        List<StoredOuting> outings = StoredOuting.readAll(StoredOuting.only(folder.recordings()));
        assertEquals(
                List.of(first, second),
                outings.stream().map(StoredOuting::counts).toList());
        assertEquals(1, outings.get(1).of("mark").size());
        assertTrue(outings.get(1).of("mark").get(0).contains("two instruments speak on this line"));
        assertEquals(
                Map.of("TWO_INSTRUMENTS", 1L), outings.get(1).outing().tally().rejected());
    }

    @Test
    void goesOnWithTheOutingWhenThePortComesBack() throws Exception {
        // given
        Started run = start(Until.STOPPED);
        port.bring(instrument.hold(0, 500).take());
        run.await("samples before it", () -> hasSamples(run, 500));

        run.await("the first line", () -> run.logger.status().portOpen());

        // when: it vanishes, is missing for a while, comes back
        port.missing(true);
        port.hangUp();
        run.await("the hang-up", () -> run.logger.status().hangUps() == 1);
        port.missing(false);
        port.bring(instrument.hold(0, 500).take());
        run.await("samples after it", () -> hasSamples(run, 1_000));
        run.stop();

        // then
        List<StoredOuting> outings = StoredOuting.readAll(StoredOuting.only(run.folder.recordings()));
        assertEquals(1, outings.size());
        assertEquals(instrument.sent(), outings.get(0).counts());
    }

    private static boolean hasSamples(Started run, long samples) {
        return run.logger.status().outing().filter(o -> o.samples() == samples).isPresent();
    }

    @Test
    void finishesAnOutingThatAPowerCutLeftOpen() throws Exception {
        // given: a recording whose outing nobody ended; nothing was said yet
        LoggerFolder folder = LoggerFolder.at(path, "scripted", LoggerFolder.DEVICE_CLOCK);
        Files.createDirectories(folder.recordings());
        Path file = folder.recordings().resolve("upper-landing_2026-05-04.tautlog");
        try (RecordingWriter writer = RecordingWriter.open(file, "upper-landing")) {
            OutingWriter cut = writer.begin(new OutingStart(
                    instrument.instrument(),
                    LoggerFolder.RIG,
                    folder.installation().cellCalibration(),
                    "tautlogd test",
                    OutingStart.Source.INSTRUMENT));
            int[] counts = instrument.haul().sent().stream()
                    .mapToInt(Integer::intValue)
                    .toArray();
            for (int k = 0; k < 2_000; k += 25) {
                cut.tension(k, 1_000_000 + 2_000L * k, 0, counts, k, 25);
            }
            cut.commit();
        }

        // when
        port.bring(new SmallInstrument(8).hold(0, 500).take()).hangUp();
        new LoggerRun(folder.installation(), port, Until.CLOSED, "tautlogd test").run();

        // then
        List<StoredOuting> outings = StoredOuting.readAll(file);
        assertEquals(2, outings.size());
        assertFalse(outings.get(0).outing().ended(), "it stays marked as cut off");
        assertTrue(outings.get(0).outing().closed());
        assertTrue(outings.get(0).said().stream()
                .anyMatch(finding -> finding.kind().equals("overload")));
        assertTrue(outings.get(1).outing().ended());
    }

    @Test
    void keepsTryingWhileTheDiskIsFullAndLosesNothing() throws Exception {
        // given: a disk that takes what comes
        FullDisk disk = new FullDisk();
        LoggerFolder folder = LoggerFolder.at(path, "scripted", LoggerFolder.HOST_CLOCK);
        LoggerRun logger = new LoggerRun(folder.installation(), port, Until.STOPPED, "tautlogd test", disk.of(folder));
        Started run = new Started(folder, logger);
        run.begin();
        port.bring(instrument.hold(0, 500).take());
        run.await("a recording", () -> logger.status().disk().lastLink().isPresent());

        // when
        disk.isFull = true;
        port.bring(instrument.hold(0, 500).take());
        run.await("trouble", () -> logger.status().disk().trouble().isPresent());
        String trouble = logger.status().disk().trouble().orElseThrow();
        String beacon = logger.status().beacon();
        port.bring(instrument.hold(0, 500).take());
        disk.isFull = false;
        run.await("no trouble", () -> logger.status().disk().trouble().isEmpty());
        run.stop();

        // then
        assertTrue(trouble.contains("the disk is full"), trouble);
        assertEquals("fault", beacon);
        StoredOuting outing =
                StoredOuting.readAll(StoredOuting.only(folder.recordings())).get(0);
        assertEquals(instrument.sent(), outing.counts());
        assertTrue(outing.outing().ended());
    }

    @Test
    void refusesAFolderThatAnotherLoggerHas() throws Exception {
        // given
        Started run = start(Until.STOPPED);
        run.await("the first", () -> new java.io.File(run.folder.recordings().toFile(), "status.json").exists());

        // when
        LoggerRun second = new LoggerRun(run.folder.installation(), new ScriptedPort(), Until.CLOSED, "tautlogd test");
        RecordingException refused = assertThrows(RecordingException.class, second::run);
        run.stop();

        // then
        assertTrue(String.valueOf(refused.getMessage()).contains("is in use by another tautlogd"));
    }

    @Test
    void commitsWithinASecondOfASamplesArrival() throws Exception {
        // given
        Started run = start(Until.STOPPED);
        port.bring(instrument.hold(0, 25).take());
        run.await("a recording", () -> run.logger.recording().isPresent());
        Path file = Path.of(run.logger.recording().orElseThrow());

        // when
        long arrivesNanos = System.nanoTime();
        port.bring(instrument.hold(0, 25).take());
        run.await("both frames", () -> samplesIn(file) == 50);
        long millis = TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - arrivesNanos);

        // then: a reader beside the logger saw it in time
        assertTrue(millis <= 1_000, millis + " ms");
        run.stop();
    }

    private static long samplesIn(Path file) {
        try (Recording recording = Recording.open(file)) {
            return recording.outings().get(0).samples();
        } catch (RecordingException notNow) {
            throw new IllegalStateException(notNow);
        }
    }

    private Started start(Until until) throws IOException, ConfigException {
        LoggerFolder folder = LoggerFolder.at(path, "scripted", LoggerFolder.HOST_CLOCK);
        Started run = new Started(folder, new LoggerRun(folder.installation(), port, until, "tautlogd test"));
        run.begin();
        return run;
    }

    /** A logger at work in a thread of its own. */
    private static final class Started {
        private final LoggerFolder folder;
        private final LoggerRun logger;
        private final AtomicReference<Optional<Exception>> failure = new AtomicReference<>(Optional.empty());
        private final Thread thread;

        Started(LoggerFolder folder, LoggerRun logger) {
            this.folder = folder;
            this.logger = logger;
            thread = new Thread(() -> {
                try {
                    logger.run();
                } catch (IOException | InterruptedException e) {
                    failure.set(Optional.of(e));
                }
            });
        }

        void begin() {
            thread.start();
        }

        void await(String what, BooleanSupplier isSo) throws InterruptedException {
            long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(10);
            while (!isSo.getAsBoolean()) {
                assertEquals(Optional.empty(), failure.get());
                assertTrue(System.nanoTime() < end, "waited in vain for " + what);
                TimeUnit.MILLISECONDS.sleep(10);
            }
        }

        void stop() throws InterruptedException {
            logger.stop();
            thread.join();
            assertEquals(Optional.empty(), failure.get());
            assertEquals(Optional.empty(), logger.bug());
        }
    }
}
