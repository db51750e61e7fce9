package tautlog.logger.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.Optional;
import java.util.function.Function;
import tautlog.logger.recorder.DayFiles;
import tautlog.logger.recorder.DiskReserve.FreeSpace;
import tautlog.logger.recorder.RecordingFiles;
import tautlog.logger.recorder.RecordingStore;

/**
 * The computer on which the logger runs, as far as a test puts another in its place.
 *
 * @param clock its idea of UTC, right or wrong
 * @param space left on the recordings' disk
 * @param disk where outings are put
 */
record Board(InstantSource clock, FreeSpace space, Function<RecordingFiles, RecordingStore> disk) {
    /** This computer. */
    static Board here(Path recordings) {
        return new Board(InstantSource.system(), () -> freeBytes(recordings), DayFiles::new);
    }

    private static Optional<Long> freeBytes(Path recordings) {
        try {
            return Optional.of(Files.getFileStore(recordings).getUsableSpace());
        } catch (IOException unknown) {
            return Optional.empty();
        }
    }
}
