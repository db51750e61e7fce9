package tautlog.recording;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Keeps a second writer out while one is at work; readers do not ask. The system drops it when the program dies.
 *
 * <pre>
 *   take:  open X-lock ─▶ lock ─▶ empty, or still of that name? ─ yes ─▶ empty it, held
 *            ▲                      └─ no: its name was taken away since ─▶ again
 *   close: make it longer ─▶ take the name away ─▶ unlock
 * </pre>
 *
 * So who opened the file before its name was taken away does not hold a lock beside another who made the name anew.
 */
final class WriterLock implements AutoCloseable {
    // a second handle on a locked file would drop the lock when it is closed: so none is opened
    private static final Set<Path> HELD = ConcurrentHashMap.newKeySet();

    /** Handles that were opened on a locked file under yet another name of it (a second mount): open until the program ends. */
    private static final Set<RandomAccessFile> KEPT_OPEN = ConcurrentHashMap.newKeySet();

    /** Chosen: when so many others took and let go of it one after the other, each between opening and locking here, it is in use. */
    private static final int TRIES = 100;

    private final Path lockFile;
    private final RandomAccessFile handle;
    private boolean held = true;

    WriterLock(Path lockFile, RandomAccessFile handle) {
        this.lockFile = lockFile;
        this.handle = handle;
    }

    /** The same for all names of its folder. */
    private static Path lockFile(Path file) {
        Path absolute = file.toAbsolutePath();
        String name = file.getFileName() + "-lock";
        try {
            return absolute.resolveSibling(".").toRealPath().resolve(name);
        } catch (IOException e) {
            return absolute.normalize().resolveSibling(name); // no such folder: opening it says so
        }
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
            for (int tries = 0; tries < TRIES; tries++) {
                RandomAccessFile handle = new RandomAccessFile(lockFile.toFile(), "rw");
                if (isLocked(file, lockFile, handle)) {
                    return new WriterLock(lockFile, handle);
                }
            }
            throw inUse(file);
        } catch (RecordingException e) {
            throw e;
        } catch (IOException e) {
            throw new RecordingException(
                    file + ": cannot be opened for writing (" + e + "). Check that its folder exists, has"
                            + " space, and that this user may write there.",
                    e);
        }
    }

    /**
     * Whether {@code handle} holds the lock now; else it is closed, and its file has lost the name of {@code lockFile} since it was opened.
     *
     * @throws RecordingException if somebody else holds the lock
     */
    static boolean isLocked(Path file, Path lockFile, RandomAccessFile handle) throws IOException {
        boolean staysOpen = false;
        try {
            if (handle.getChannel().tryLock() == null) {
                throw inUse(file);
            }
            staysOpen = isEmptied(lockFile, handle);
            return staysOpen;
        } catch (OverlappingFileLockException e) {
            staysOpen = KEPT_OPEN.add(handle);
            throw inUse(file);
        } finally {
            if (!staysOpen) {
                handle.close();
            }
        }
    }

    /** A file that is not empty and has its name was left by a kill, by a power cut or where the name could not be removed. */
    private static boolean isEmptied(Path lockFile, RandomAccessFile handle) throws IOException {
        long length = handle.length();
        if (length == 0) {
            return true;
        }
        boolean hasItsName = growsTogether(lockFile, handle, length);
        if (hasItsName) {
            handle.setLength(0);
        }
        return hasItsName;
    }

    /** Tells whether both are one file, without a second handle. */
    private static boolean growsTogether(Path lockFile, RandomAccessFile handle, long length) throws IOException {
        try {
            if (Files.size(lockFile) != length) {
                return false;
            }
            handle.setLength(length + 1);
            return Files.size(lockFile) == length + 1;
        } catch (NoSuchFileException e) {
            return false;
        }
    }

    private static RecordingException inUse(Path file) {
        return RecordingException.ofThisFile(file
                + ": is being written by another program. One logger writes a recording; stop the other one first.");
    }

    /**
     * Lets go of it, once: a second call does nothing. Where the lock file cannot be marked or removed it stays, and the next writer takes
     * it; that is no failure of what was done under the lock.
     */
    @Override
    public void close() {
        if (!held) {
            return;
        }
        held = false;
        try (handle) {
            handle.setLength(1); // whoever opened it before is told; takes no room on most disks
            Files.deleteIfExists(lockFile);
        } catch (IOException e) {
            // it is unlocked all the same
            return;
        } finally {
            HELD.remove(lockFile);
        }
    }
}
