package tautlog.recording;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Keeps a second writer out while one is at work; readers do not ask. The system drops it when the program dies.
 *
 * <pre>
 *   take:  open X-lock ─▶ lock ─▶ empty? ─ yes ─▶ held
 *            ▲                      └─ no: its name was taken away since ─▶ again
 *   close: take the name away ─▶ make it longer ─▶ unlock
 * </pre>
 *
 * So who opened the file before its name was taken away does not hold a lock beside another who made the name anew.
 */
final class WriterLock implements AutoCloseable {
    // a second handle on a locked file would drop the lock when it is closed: so none is opened
    private static final Set<Path> HELD = ConcurrentHashMap.newKeySet();

    /** Chosen: so many others never take and let go of it one after the other, each between opening and locking here. */
    private static final int TRIES = 100;

    private final Path file;
    private final Path lockFile;
    private final RandomAccessFile handle;
    private boolean held = true;

    private WriterLock(Path file, Path lockFile, RandomAccessFile handle) {
        this.file = file;
        this.lockFile = lockFile;
        this.handle = handle;
    }

    private static Path lockFile(Path file) {
        return file.toAbsolutePath().normalize().resolveSibling(file.getFileName() + "-lock");
    }

    /** Whether a lock file lies there: of a writer at work, or of one that was killed. */
    static boolean isThere(Path file) {
        return Files.exists(lockFile(file));
    }

    static WriterLock take(Path file) throws RecordingException {
        Path lockFile = lockFile(file);
        if (!HELD.add(lockFile)) {
            throw inUse(file);
        }
        boolean taken = false;
        try {
            WriterLock lock = open(file, lockFile);
            taken = true;
            return lock;
        } finally {
            if (!taken) {
                HELD.remove(lockFile);
            }
        }
    }

    private static WriterLock open(Path file, Path lockFile) throws RecordingException {
        try {
            for (int tries = 1; ; tries++) {
                RandomAccessFile handle = new RandomAccessFile(lockFile.toFile(), "rw");
                if (isLocked(file, handle, tries)) {
                    return new WriterLock(file, lockFile, handle);
                }
            }
        } catch (RecordingException e) {
            throw e;
        } catch (IOException e) {
            throw new RecordingException(
                    file + ": cannot be opened for writing (" + e + "). Check that its folder exists, has"
                            + " space, and that this user may write there.",
                    e);
        }
    }

    /** Else {@code handle} is closed. After the last try it is a file that lies there: a power cut kept its name. */
    private static boolean isLocked(Path file, RandomAccessFile handle, int tries) throws IOException {
        boolean locked = false;
        try {
            if (handle.getChannel().tryLock() == null) {
                throw inUse(file);
            }
            if (handle.length() > 0 && tries == TRIES) {
                handle.setLength(0);
            }
            locked = handle.length() == 0;
            return locked;
        } finally {
            if (!locked) {
                handle.close();
            }
        }
    }

    private static RecordingException inUse(Path file) {
        return RecordingException.ofThisFile(file
                + ": is being written by another program. One logger writes a recording; stop the other one first.");
    }

    /**
     * Lets go of it, once: a second call does nothing. Where the lock file cannot be removed it stays, and the next writer takes it.
     *
     * @throws RecordingException if the disk fails; nobody is kept out all the same
     */
    @Override
    public void close() throws RecordingException {
        if (!held) {
            return;
        }
        held = false;
        try (handle) {
            if (isRemoved()) {
                handle.setLength(1); // takes no room on the disk
            }
        } catch (IOException e) {
            throw new RecordingException(file + ": its lock cannot be let go in order: " + e.getMessage(), e);
        } finally {
            HELD.remove(lockFile);
        }
    }

    private boolean isRemoved() {
        try {
            Files.deleteIfExists(lockFile);
            return true;
        } catch (IOException e) {
            return false;
        }
    }
}
