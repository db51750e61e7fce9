package tautlog.desk.use;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;

/**
 * How a recording's file lies on the disk: what changes when somebody writes to it.
 *
 * @param logBytes of the log beside it, 0 when there is none
 * @param logWritten {@link Instant#EPOCH} when there is none
 */
record FileState(long bytes, Instant written, long logBytes, Instant logWritten) {
    /** Chosen: the coarsest clock of a file system that people use (FAT) ticks each 2 s. */
    private static final Duration COARSEST = Duration.ofSeconds(2);

    static FileState of(Path file) throws IOException {
        BasicFileAttributes main = Files.readAttributes(file, BasicFileAttributes.class);
        Path log = file.resolveSibling(file.getFileName() + "-wal");
        try {
            BasicFileAttributes beside = Files.readAttributes(log, BasicFileAttributes.class);
            if (beside.size() > 0) {
                return new FileState(
                        main.size(), time(main.lastModifiedTime()), beside.size(), time(beside.lastModifiedTime()));
            }
        } catch (NoSuchFileException e) {
            return new FileState(main.size(), time(main.lastModifiedTime()), 0, Instant.EPOCH);
        }
        return new FileState(main.size(), time(main.lastModifiedTime()), 0, Instant.EPOCH);
    }

    private static Instant time(FileTime time) {
        return time.toInstant().truncatedTo(ChronoUnit.MICROS); // as it is remembered
    }

    /** False while a further change might not show: it was written so lately that its time might stay the same. */
    boolean tellsOfChanges(Instant now) {
        Instant latest = written.isAfter(logWritten) ? written : logWritten;
        return latest.isBefore(now.minus(COARSEST));
    }
}
