package tautlog.recording;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/**
 * Takes the readings of outings that told nothing ({@link ThinnableOutings}) out of a recording that is closed, and gives their
 * room back to the disk. {@code analyzer/RECORDING.md}, "Thinned".
 *
 * <pre>
 *   X.tautlog ──▶ X.tautlog-thin: all rows, stubs for blocks of samples, a row that says so ──▶ verified ──▶ renamed to X.tautlog
 * </pre>
 *
 * So the file under its name is at every moment the whole one or the thinned one. Readers that have it open go on reading the
 * one that they opened. One thread.
 */
public final class Thinner {
    /** What follows the name of a recording while its thinned copy is made. */
    private static final String ENDING = "-thin";

    private final Path file;
    private final Path copy;

    private Thinner(Path file) {
        this.file = file;
        this.copy = file.resolveSibling(file.getFileName() + ENDING);
    }

    /**
     * Thins outings, the oldest first, until {@code wantedBytes} are given back or none is left.
     *
     * @param freeBytes of the disk: the thinned copy must find room beside the file
     * @param utcMicros now, in microseconds since 1970; empty while no clock is known
     * @throws RecordingException if the file cannot be read, is being written, or there is no room; it is as it was then
     */
    public static Thinned thin(Path file, long wantedBytes, long freeBytes, OptionalLong utcMicros)
            throws RecordingException {
        return new Thinner(file).thin(wantedBytes, freeBytes, utcMicros);
    }

    /** Deletes what a power cut left of a copy of {@code file}. */
    public static void deleteLeftOver(Path file) throws IOException {
        Thinner thinner = new Thinner(file);
        Files.deleteIfExists(thinner.copy.resolveSibling(thinner.copy.getFileName() + "-journal"));
        Files.deleteIfExists(thinner.copy);
    }

    private Thinned thin(long wantedBytes, long freeBytes, OptionalLong utcMicros) throws RecordingException {
        if (!leavesLogMode()) {
            return Thinned.NOTHING;
        }
        WriterLock lock = WriterLock.take(file);
        try {
            deleteLeftOver(file);
            Thinned thinned = thinLocked(wantedBytes, freeBytes, utcMicros);
            lock.release();
            return thinned;
        } catch (SQLException e) {
            throw failed(lock, RecordingFile.explain(file, e));
        } catch (RecordingException e) {
            throw failed(lock, e);
        } catch (IOException e) {
            throw failed(lock, new RecordingException(file + ": cannot be thinned: " + e.getMessage(), e));
        }
    }

    /** The file stays as it was, without a copy beside it. */
    private RecordingException failed(WriterLock lock, RecordingException told) {
        try {
            deleteLeftOver(file);
            lock.release();
        } catch (IOException also) {
            told.addSuppressed(also);
        }
        return told;
    }

    /** A reader at work when the recording was closed left it in log mode; false while that cannot be mended. */
    private boolean leavesLogMode() throws RecordingException {
        String winch;
        try (Recording recording = Recording.open(file)) {
            if (!recording.isInLogMode()) {
                return true;
            }
            if (!recording.lostOutings().isEmpty()
                    || !recording.outings().stream().allMatch(Outing::closed)) {
                return false;
            }
            winch = recording.winch();
        }
        RecordingWriter.open(file, winch).close();
        try (Recording recording = Recording.open(file)) {
            return !recording.isInLogMode();
        }
    }

    private Thinned thinLocked(long wantedBytes, long freeBytes, OptionalLong utcMicros)
            throws SQLException, IOException {
        List<Outing> chosen;
        Verification before;
        try (Recording recording = Recording.open(file)) {
            before = recording.verify();
            chosen = choose(recording, before, wantedBytes, freeBytes);
            if (chosen.isEmpty()) {
                return Thinned.NOTHING;
            }
            ThinnedCopy.write(file, copy, chosen, utcMicros);
        }
        requireSame(before);
        long bytes = Files.size(file) - Files.size(copy);
        replace();
        long samples = chosen.stream().mapToLong(Outing::samples).sum();
        return new Thinned(chosen.size(), samples, bytes);
    }

    private List<Outing> choose(Recording recording, Verification verified, long wantedBytes, long freeBytes)
            throws IOException {
        List<Outing> chosen = new ArrayList<>();
        long bytes = 0;
        for (Outing outing : new ThinnableOutings(recording).list(verified)) {
            if (bytes < wantedBytes) {
                chosen.add(outing);
                bytes += recording.sampleBytes(outing);
            }
        }
        long room = Files.size(file) - bytes;
        if (!chosen.isEmpty() && room > freeBytes) {
            throw new RecordingException(file + ": thinning needs " + (room >> 10) + " KiB for the smaller copy, "
                    + (freeBytes >> 10) + " are free. Free space.");
        }
        return chosen;
    }

    /** Readings that are gone cannot be had again: so the copy is checked whole before it takes the file's place. */
    private void requireSame(Verification before) throws RecordingException {
        try (Recording recording = Recording.open(copy)) {
            Verification after = recording.verify();
            if (!after.damages().equals(before.damages())
                    || !after.lost().equals(before.lost())
                    || after.outings().size() != before.outings().size()) {
                throw new RecordingException(file + ": its thinned copy is not what it should be: " + after.damages());
            }
        }
    }

    private void replace() throws IOException {
        flushFolder();
        Files.move(copy, file, StandardCopyOption.ATOMIC_MOVE);
        flushFolder();
    }

    private void flushFolder() throws IOException {
        try (FileChannel folder =
                FileChannel.open(file.toAbsolutePath().resolveSibling(".").normalize(), StandardOpenOption.READ)) {
            folder.force(true);
        }
    }
}
