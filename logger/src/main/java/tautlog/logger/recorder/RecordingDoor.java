package tautlog.logger.recorder;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantReadWriteLock;

/**
 * Keeps this program's own readers away from a recording while it is closed: a reader at work would keep the log beside the file.
 *
 * <p>Readers stay for some milliseconds; the recorder waits for them for a limited time only, and then goes on all the same.
 */
public final class RecordingDoor {
    private static final long LONGEST_WAIT_SECONDS = 2;

    private final ReentrantReadWriteLock lock = new ReentrantReadWriteLock(true);

    /** Work on an open recording. */
    public interface Visit<T, E extends Exception> {
        T pay() throws E;
    }

    /** Reads while nothing is closed. */
    public <T, E extends Exception> T read(Visit<T, E> visit) throws E {
        lock.readLock().lock();
        try {
            return visit.pay();
        } finally {
            lock.readLock().unlock();
        }
    }

    /** Closes while nobody reads, or after a time. */
    <T, E extends Exception> T close(Visit<T, E> visit) throws E {
        boolean alone = tryAlone();
        try {
            return visit.pay();
        } finally {
            if (alone) {
                lock.writeLock().unlock();
            }
        }
    }

    private boolean tryAlone() {
        try {
            return lock.writeLock().tryLock(LONGEST_WAIT_SECONDS, TimeUnit.SECONDS);
        } catch (InterruptedException hurried) {
            Thread.currentThread().interrupt();
            return false;
        }
    }
}
