package tautlog.logger.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tautlog.logger.LoggerFolder;
import tautlog.logger.ScriptedPort;
import tautlog.logger.SmallInstrument;
import tautlog.logger.StoredOuting;
import tautlog.logger.recorder.DayFiles;
import tautlog.logger.recorder.RecordingFiles;
import tautlog.logger.recorder.RecordingStore;
import tautlog.logger.run.LoggerRun.Until;
import tautlog.logger.wire.LineCounts;
import tautlog.logger.wire.LineCounts.OutingState;
import tautlog.recording.OutingStart;
import tautlog.recording.OutingWriter;
import tautlog.recording.RecordingException;
import tautlog.sample.Tally;

/** A recording that cannot be closed, and an instrument that never says what it is. */
@Timeout(60)
class TroubleTest {
    @TempDir
    Path path;

    private final ScriptedPort port = new ScriptedPort();

    @Test
    void endsInTroubleAndNamesTheRecordingThatCouldNotBeClosed() throws Exception {
        // given
        LoggerFolder folder = LoggerFolder.at(path, "scripted", LoggerFolder.DEVICE_CLOCK);
        SmallInstrument instrument = new SmallInstrument(7);
        port.bring(instrument.hold(0, 500).take()).hangUp();
        Board here = Board.here(folder.recordings());
        Board board = new Board(here.clock(), here.space(), NeverClosing::new);
        LoggerRun logger = new LoggerRun(folder.installation(), port, Until.CLOSED, "tautlogd test", board);

        // when
        RecordingException failure = assertThrows(RecordingException.class, logger::run);

        // then
        Path file = StoredOuting.only(folder.recordings());
        String words = String.valueOf(failure.getMessage());
        assertTrue(words.contains("everything is recorded in " + file), words);
        assertTrue(words.contains("the disk went away"), words);
        assertEquals(Optional.of(words), logger.failure(), "what Ctrl-C says, too");
        assertEquals(instrument.sent(), StoredOuting.readAll(file).get(0).counts());
    }

    @Test
    void tellsWhatCameFromAnInstrumentThatNeverSaidWhatItIs() throws Exception {
        // given: a line of the wrong speed, as it looks, and no HELLO
        LoggerFolder folder = LoggerFolder.at(path, "scripted", LoggerFolder.DEVICE_CLOCK);
        port.bring(new byte[] {5, 6, 7, 0, 2, 1, 0}).hangUp();
        LoggerRun logger = new LoggerRun(folder.installation(), port, Until.CLOSED, "tautlogd test");

        // when
        logger.run();

        // then
        assertEquals(
                new LineCounts(new Tally(Map.of("BAD_COBS", 1L, "TOO_SHORT", 1L), 0, 0, 0), 0, OutingState.NONE),
                logger.status().line());
        assertEquals(Optional.empty(), logger.status().outing());
    }

    /** Real recordings that say at the end that they could not be closed. */
    private static final class NeverClosing implements RecordingStore {
        private final DayFiles real;

        NeverClosing(RecordingFiles files) {
            real = new DayFiles(files);
        }

        @Override
        public OutingWriter begin(OutingStart start, Optional<Long> utcMicros) throws RecordingException {
            return real.begin(start, utcMicros);
        }

        @Override
        public Optional<String> file() {
            return real.file();
        }

        @Override
        public void close() throws RecordingException {
            real.close();
            throw new RecordingException("the disk went away");
        }
    }
}
