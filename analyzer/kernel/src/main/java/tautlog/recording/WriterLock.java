package tautlog.recording;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/** Keeps a second writer out while one is at work; readers do not ask. The system drops it when the program dies. */
final class WriterLock {
    // a second handle on a locked file would drop the lock when it is closed: so none is opened
    private static final Set<Path> HELD = ConcurrentHashMap.newKeySet();

    private final Path lockFile;
    private final FileChannel channel;

    private WriterLock(Path lockFile, FileChannel channel) {
        this.lockFile = lockFile;
        this.channel = channel;
    }

    static WriterLock take(Path file) throws RecordingException {
        Path lockFile = file.toAbsolutePath().normalize().resolveSibling(file.getFileName() + "-lock");
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
            FileChannel channel = FileChannel.open(lockFile, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            if (channel.tryLock() == null) {
                channel.close();
                throw inUse(file);
            }
            return new WriterLock(lockFile, channel);
        } catch (RecordingException e) {
            throw e;
        } catch (IOException e) {
            throw new RecordingException(
                    file + ": cannot be opened for writing (" + e + "). Check that its folder exists, has"
                            + " space, and that this user may write there.",
                    e);
        }
    }

    private static RecordingException inUse(Path file) {
        return RecordingException.ofThisFile(file
                + ": is being written by another program. One logger writes a recording; stop the other one first.");
    }

    void release() throws IOException {
        Files.deleteIfExists(lockFile);
        channel.close();
        HELD.remove(lockFile);
    }
}
