package tautlog.logger.recorder;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tautlog.calibration.CellCalibration;
import tautlog.logger.LoggerFolder;
import tautlog.logger.beacon.BeaconLamp;
import tautlog.recording.OutingStart;
import tautlog.recording.OutingWriter;
import tautlog.recording.RecordingException;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;

/** A recorder that does not get on: because of a disk, which is told and waited for, or by itself, which ends the program. */
@Timeout(20)
class HungRecorderTest {
    private static final OutingStart START = new OutingStart(
            new Instrument("TL-0001", 1, 0, 7, 1_000_000, 500_000, 8_388_607, 6),
            LoggerFolder.RIG,
            CellCalibration.written(Calibration.of("0", "0.01")),
            "tautlogd test",
            OutingStart.Source.INSTRUMENT);

    @TempDir
    Path folder;

    private final Backlog backlog = new Backlog(Overflow.LOSE, 1);
    private final CountDownLatch hangs = new CountDownLatch(1);
    private final CountDownLatch never = new CountDownLatch(1);
    private Thread thread = new Thread();

    @AfterEach
    void end() throws InterruptedException {
        thread.interrupt();
        thread.join();
    }

    private Recorder recording(RecordingStore store) throws InterruptedException {
        Recorder recorder = new Recorder(backlog, store, new BeaconLamp());
        thread = new Thread(recorder);
        thread.setUncaughtExceptionHandler((where, ended) -> {}); // how it ends is not the test's business
        thread.start();
        return recorder;
    }

    private void beginOuting() {
        backlog.open(System.nanoTime());
        backlog.begin(START, Optional.of(1_777_878_000_000_000L));
        backlog.shut();
    }

    private static long in(long time, TimeUnit unit) {
        return System.nanoTime() + unit.toNanos(time);
    }

    @Test
    void withNothingToDoIsNotHung() throws Exception {
        assertFalse(recording(new HangingIn(Place.NOWHERE)).isHung(in(1, TimeUnit.HOURS)));
    }

    @Test
    void heldByADiskIsNotHungForTenMinutes() throws Exception {
        Recorder recorder = recording(new HangingIn(Place.DISK));
        beginOuting();
        hangs.await();

        assertFalse(recorder.isHung(in(9, TimeUnit.MINUTES)));
        assertTrue(recorder.isHung(in(11, TimeUnit.MINUTES)));
    }

    @Test
    void hangingByItselfIsHungAfterFifteenSeconds() throws Exception {
        Recorder recorder = recording(new HangingIn(Place.ELSEWHERE));
        beginOuting();
        hangs.await();

        assertFalse(recorder.isHung(in(5, TimeUnit.SECONDS)));
        assertTrue(recorder.isHung(in(16, TimeUnit.SECONDS)));
    }

    @Test
    void refusedByADiskIsNotHung() throws Exception {
        Recorder recorder = recording(new HangingIn(Place.REFUSING));
        beginOuting();
        while (recorder.state().trouble().isEmpty()) {
            Thread.onSpinWait();
        }

        assertFalse(recorder.isHung(in(1, TimeUnit.HOURS)));
    }

    private enum Place {
        NOWHERE,
        DISK,
        REFUSING,
        ELSEWHERE
    }

    /** A store that keeps the recorder for ever in one place. */
    private final class HangingIn implements RecordingStore {
        private final Place place;
        private final DayFiles real = new DayFiles(new RecordingFiles(folder, "upper-landing"));

        HangingIn(Place place) {
            this.place = place;
        }

        @Override
        public OutingWriter begin(OutingStart start, Optional<Long> utcMicros) throws RecordingException {
            if (place == Place.REFUSING) {
                throw new RecordingException("the disk refuses");
            }
            if (place == Place.DISK) {
                hang();
            }
            return real.begin(start, utcMicros);
        }

        /** Asked after a beginning, when the disk has done its part. */
        @Override
        public Optional<String> file() {
            if (place == Place.ELSEWHERE) {
                hang();
            }
            return real.file();
        }

        @Override
        public void close() throws RecordingException {
            real.close();
        }

        private void hang() {
            hangs.countDown();
            try {
                never.await();
            } catch (InterruptedException end) {
                throw new IllegalStateException("the test is over", end);
            }
        }
    }
}
