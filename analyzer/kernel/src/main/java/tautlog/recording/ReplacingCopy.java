package tautlog.recording;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFileAttributeView;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermission;
import java.sql.SQLException;
import java.util.Collections;
import java.util.EnumSet;
import java.util.Set;
import java.util.function.Predicate;

/**
 * A copy of a closed recording that is made beside it, under its name and an ending, and takes its place once it is whole: under the name
 * is at every moment the one or the other. Readers that have the file open go on reading the one that they opened. One thread.
 */
final class ReplacingCopy {
    private static final Set<PosixFilePermission> WRITE = EnumSet.of(
            PosixFilePermission.OWNER_WRITE, PosixFilePermission.GROUP_WRITE, PosixFilePermission.OTHERS_WRITE);

    private final Path file;
    private final Path copy;

    ReplacingCopy(Path file, String ending) {
        this.file = file;
        this.copy = file.resolveSibling(file.getFileName() + ending);
    }

    Path copy() {
        return copy;
    }

    /** Whether a kill left something beside the file, in a folder where it can be cleared away. */
    private boolean isLeftOver() {
        return Files.isWritable(file.toAbsolutePath().resolveSibling("."))
                && (Files.exists(copy) || Files.exists(RecordingCopy.journal(copy)) || WriterLock.isThere(file));
    }

    /**
     * Refuses a file of which its owner said that this very one is to stay.
     *
     * @throws RecordingException if it is write-protected, for root too, or has a second name, under which the old one would stay
     */
    void requireReplaceable() throws RecordingException {
        try {
            if (isProtected()) {
                throw RecordingException.ofThisFile(file + ": is write-protected and stays as it is. Give this user"
                        + " write permission for it, if it is to be replaced.");
            }
            int names = names();
            if (names > 1) {
                throw RecordingException.ofThisFile(file + ": has " + names + " names on this disk (hard links) and"
                        + " stays as it is: under the others the file as it was would stay, and no room be gained."
                        + " Remove them, or copy the file and name the copy.");
            }
        } catch (RecordingException e) {
            throw e;
        } catch (IOException e) {
            throw new RecordingException(file + ": its permissions cannot be told: " + e.getMessage(), e);
        }
    }

    private boolean isProtected() throws IOException {
        PosixFileAttributeView of = Files.getFileAttributeView(file, PosixFileAttributeView.class);
        return !Files.isWritable(file)
                || (of != null && Collections.disjoint(of.readAttributes().permissions(), WRITE));
    }

    private int names() throws IOException {
        boolean areTold = file.getFileSystem().supportedFileAttributeViews().contains("unix");
        return areTold && Files.getAttribute(file, "unix:nlink") instanceof Integer names ? names : 1;
    }

    /** Clears away what a kill left, if anything; it stays while somebody is at work on the file, and where it cannot be deleted. */
    void clearLeftOver() {
        if (!isLeftOver()) {
            return;
        }
        try {
            WriterLock lock = WriterLock.take(file);
            try (lock) {
                deleteLeftOver();
            }
        } catch (IOException e) {
            // it takes room, no more: the next packing of the file tries again
            return;
        }
    }

    /** Deletes what a power cut left of a copy. */
    void deleteLeftOver() throws IOException {
        RecordingCopy.remove(copy);
    }

    /**
     * Folds a log into the file that a power cut, or a reader at work, left beside it; false where rows are missing or an outing is not
     * {@code done}.
     *
     * @throws RecordingException also while another program reads the file
     */
    boolean leavesLogMode(Predicate<Outing> done) throws RecordingException {
        String winch;
        try (Recording recording = Recording.open(file)) {
            if (!recording.isInLogMode()) {
                return true;
            }
            if (!recording.lostOutings().isEmpty()
                    || !recording.outings().stream().allMatch(done)) {
                return false;
            }
            winch = recording.winch();
        }
        RecordingWriter.open(file, winch).close();
        try (Recording recording = Recording.open(file)) {
            if (recording.isInLogMode()) {
                throw RecordingException.ofThisFile(
                        file + ": stays as it is while another program reads it. Close that, and try again.");
            }
            return true;
        }
    }

    /** Makes the copy, and lets it take the file's place or not. */
    interface Work<T> {
        T done() throws SQLException, IOException;
    }

    /**
     * Does {@code work} while nobody else writes to the file, be it a recorder or another SQLite program: what that committed to the old
     * file behind the copying would be lost. After a failure the file stays as it was, without a copy beside it.
     *
     * @param verb what was to become of the file, for the refusal
     */
    <T> T locked(String verb, Work<T> work) throws RecordingException {
        WriterLock lock = WriterLock.take(file);
        try (lock) {
            deleteLeftOver();
            return doneOrCleared(() -> reserved(work));
        } catch (SQLException e) {
            throw RecordingFile.explain(file, e);
        } catch (RecordingException e) {
            throw e;
        } catch (IOException e) {
            throw new RecordingException(file + ": cannot be " + verb + ": " + e.getMessage(), e);
        }
    }

    private <T> T reserved(Work<T> work) throws SQLException, IOException {
        ReservedLock lock = ReservedLock.take(file);
        try (lock) {
            return work.done();
        }
    }

    private <T> T doneOrCleared(Work<T> work) throws SQLException, IOException {
        try {
            return work.done();
        } catch (SQLException | IOException | RuntimeException e) {
            try {
                deleteLeftOver();
            } catch (IOException also) {
                e.addSuppressed(also);
            }
            throw e;
        }
    }

    /**
     * The copy, which is whole and flushed, takes the file's place, with its owner, group and permissions: whoever could go on with the
     * file still can.
     *
     * @throws IOException also when this user may not give them to the copy; the file then stays
     */
    void takePlace() throws IOException {
        keepOwner();
        flushFolder();
        Files.move(copy, file, StandardCopyOption.ATOMIC_MOVE);
        flushReplaced();
    }

    private void flushReplaced() {
        try {
            flushFolder();
        } catch (IOException e) {
            // it is replaced; after a power cut the one or the other stands there, both whole
            return;
        }
    }

    private void keepOwner() throws IOException {
        PosixFileAttributeView of = Files.getFileAttributeView(file, PosixFileAttributeView.class);
        if (of == null) {
            return; // no such system of files
        }
        PosixFileAttributes was = of.readAttributes();
        PosixFileAttributeView to = Files.getFileAttributeView(copy, PosixFileAttributeView.class);
        PosixFileAttributes is = to.readAttributes();
        if (!is.owner().equals(was.owner())) {
            to.setOwner(was.owner());
        }
        if (!is.group().equals(was.group())) {
            to.setGroup(was.group());
        }
        if (!is.permissions().equals(was.permissions())) {
            to.setPermissions(was.permissions());
        }
    }

    private void flushFolder() throws IOException {
        try (FileChannel folder =
                FileChannel.open(file.toAbsolutePath().resolveSibling(".").normalize(), StandardOpenOption.READ)) {
            folder.force(true);
        }
    }
}
