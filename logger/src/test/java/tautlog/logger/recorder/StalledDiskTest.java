package tautlog.logger.recorder;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tautlog.calibration.CellCalibration;
import tautlog.logger.LoggerFolder;
import tautlog.logger.StoredOuting;
import tautlog.logger.beacon.BeaconLamp;
import tautlog.recording.Outing;
import tautlog.recording.OutingStart;
import tautlog.recording.OutingWriter;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;

/** A recorder whose disk takes nothing for longer than the backlog holds. */
@Timeout(20)
class StalledDiskTest {
    private static final OutingStart START = new OutingStart(
            new Instrument("TL-0001", 1, 0, 7, 1_000_000, 500_000, 8_388_607, 6),
            LoggerFolder.RIG,
            CellCalibration.written(Calibration.of("0", "0.01")),
            "tautlogd test",
            OutingStart.Source.INSTRUMENT);
    private static final int PER_FRAME = 50;

    @TempDir
    Path folder;

    @Test
    void writesWhatItLostIntoTheOutingThatLostItAndNotIntoTheNext() throws Exception {
        // given: a disk that hangs, and two outings meanwhile; the first does not fit the backlog
        CountDownLatch disk = new CountDownLatch(1);
        Backlog backlog = new Backlog(Overflow.LOSE, 1);
        HangingDisk store = new HangingDisk(new DayFiles(new RecordingFiles(folder, "upper-landing")), disk);
        Recorder recorder = new Recorder(backlog, store, new BeaconLamp());
        Thread thread = new Thread(recorder);
        backlog.open(0);
        backlog.begin(START, Optional.of(1_777_878_000_000_000L));
        int sent = 0;
        while (backlog.lostSamples() < 1_000) {
            backlog.tension(sent, 2_000L * sent, 0, new int[PER_FRAME], 0, PER_FRAME);
            sent += PER_FRAME;
        }
        backlog.shaft(2_000L * sent, 0, new long[60], 60);
        backlog.end();
        backlog.shut();
        thread.start();
        store.isAsked.await();

        // when: the next outing comes while it still hangs, then the disk goes on
        backlog.open(1);
        backlog.begin(START, Optional.of(1_777_878_060_000_000L));
        backlog.tension(0, 0, 0, new int[PER_FRAME], 0, PER_FRAME);
        backlog.end();
        backlog.shut();
        disk.countDown();
        recorder.stop();
        thread.join();

        // then
        int stored = sent - 1_000;
        List<List<String>> outings = stored();
        assertEquals(
                List.of(
                        "mark " + stored
                                + " tautlogd: the disk stalled, lost from here to the outing's end: samples 1000, other frames 1",
                        "end"),
                outings.get(0).subList(outings.get(0).size() - 2, outings.get(0).size()));
        assertEquals(stored / PER_FRAME, outings.get(0).size() - 2);
        assertEquals(List.of("tension 0 0 0 " + Arrays.toString(new int[PER_FRAME]), "end"), outings.get(1));
    }

    private List<List<String>> stored() throws IOException {
        List<List<String>> outings = new ArrayList<>();
        try (Recording recording = Recording.open(StoredOuting.only(folder))) {
            for (Outing outing : recording.outings()) {
                WrittenEvents evidence = new WrittenEvents();
                recording.replay(outing, evidence);
                outings.add(evidence.lines());
            }
        }
        return outings;
    }

    /** A disk that hangs in the first call until it is let go. */
    private static final class HangingDisk implements RecordingStore {
        private final RecordingStore real;
        private final CountDownLatch disk;
        private final CountDownLatch isAsked = new CountDownLatch(1);

        HangingDisk(RecordingStore real, CountDownLatch disk) {
            this.real = real;
            this.disk = disk;
        }

        @Override
        public OutingWriter begin(OutingStart start, Optional<Long> utcMicros) throws RecordingException {
            isAsked.countDown();
            try {
                disk.await();
            } catch (InterruptedException e) {
                throw new RecordingException("interrupted", e);
            }
            return real.begin(start, utcMicros);
        }

        @Override
        public Optional<String> file() {
            return real.file();
        }

        @Override
        public void close() throws RecordingException {
            real.close();
        }
    }
}
