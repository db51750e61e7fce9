package tautlog.desk.disk;

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
 * @param logWritten {@link Instant#EPOCH} when there is none, or nothing in it
 */
public record FileState(long bytes, Instant written, long logBytes, Instant logWritten) {
    /**
     * Chosen: as long as the logger's memory lasts when the disk stalls. What a commit writes shows in the log's size and time before the
     * commit can be read: not until the disk has it. It covers the coarsest clock of a file system that people use, too (FAT, 2 s).
     */
    private static final Duration SETTLED_AFTER = Duration.ofSeconds(60);

    public static FileState of(Path file) throws IOException {
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

    /** False when it was written so lately that what is read from it now may not be all, though nothing here changes any more. */
    public boolean isSettled(Instant now) {
        Instant latest = written.isAfter(logWritten) ? written : logWritten;
        return latest.isBefore(now.minus(SETTLED_AFTER));
    }
}
