package tautlog.logger.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import tautlog.logger.recorder.DayFiles;
import tautlog.logger.recorder.DiskReserve.FreeSpace;
import tautlog.logger.recorder.RecordingFiles;
import tautlog.logger.recorder.RecordingStore;

/**
 * The computer on which the logger runs, as far as a test puts another in its place.
 *
 * @param clock its idea of UTC, right or wrong
 * @param synchronised whether the system says that its clock is set from outside; false when it does not say
 * @param space left on the recordings' disk
 * @param disk where outings are put
 */
record Board(
        InstantSource clock,
        BooleanSupplier synchronised,
        FreeSpace space,
        Function<RecordingFiles, RecordingStore> disk) {
    /** Where systemd-timesyncd leaves word, see its manual page (from memory). Other services leave none. */
    private static final Path SYNCHRONISED = Path.of("/run/systemd/timesync/synchronized");

    /** One whose system does not say where its clock comes from. */
    Board(InstantSource clock, FreeSpace space, Function<RecordingFiles, RecordingStore> disk) {
        this(clock, () -> false, space, disk);
    }

    /** This computer. */
    static Board here(Path recordings) {
        return new Board(
                InstantSource.system(), () -> Files.exists(SYNCHRONISED), () -> freeBytes(recordings), DayFiles::new);
    }

    private static Optional<Long> freeBytes(Path recordings) {
        try {
            return Optional.of(Files.getFileStore(recordings).getUsableSpace());
        } catch (IOException unknown) {
            return Optional.empty();
        }
    }
}
