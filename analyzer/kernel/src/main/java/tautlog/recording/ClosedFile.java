package tautlog.recording;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Reads all bytes of a recording that nobody writes to, past SQLite, in one go.
 *
 * <pre>
 *   no connection to it in this process ({@link OpenConnections})
 *     └─▶ open ─▶ the lock that SQLite's readers take ─▶ no journal or log beside it ─▶ read ─▶ close, which unlocks
 * </pre>
 *
 * While that lock is held no other process writes to the file or turns to a log: for both SQLite asks for the lock that excludes it. With
 * no journal and no log there is nothing to undo or to add; that the file itself is not in log mode its header says (bytes 18 and 19),
 * which {@link PlainRows} looks at. Where any of this cannot be had, or reading fails, nothing is given and SQLite is to read the file: it
 * knows what to say.
 *
 * <p>Source of the lock's bytes: os.h of SQLite (PENDING_BYTE, SHARED_FIRST, SHARED_SIZE; from memory). A test sees SQLite kept out by them.
 */
final class ClosedFile {
    /** Chosen: at 500 samples a second that is 18 h. */
    private static final long WORTH_IT = 32 << 20;

    static final long LARGEST =
            largest(Runtime.getRuntime().maxMemory(), Runtime.getRuntime().availableProcessors());

    /** Who wants to write waits here and lets no new reader in. */
    static final long PENDING = 0x4000_0000L;

    static final long SHARED = PENDING + 2;
    static final long SHARED_BYTES = 510;
    private static final int CHUNK = 64 << 10;

    /** Handles on a file that took another's place in between, which may be open in this process: open until the program ends. */
    private static final Set<FileChannel> KEPT_OPEN = ConcurrentHashMap.newKeySet();

    private ClosedFile() {}

    /**
     * In bytes: as many files as there are workers, one a processor, take an eighth of the heap together. With two and 512 MB the limit
     * is 32 MB each.
     */
    static long largest(long heapBytes, int processors) {
        return Math.min(WORTH_IT, heapBytes / (8L * processors));
    }

    static Optional<byte[]> read(Path named) {
        try {
            // SQLite puts a journal and a log beside the file itself, not beside a link to it
            Path file = named.toRealPath();
            BasicFileAttributes found = Files.readAttributes(file, BasicFileAttributes.class);
            if (!found.isRegularFile() || found.size() == 0 || found.size() > LARGEST) {
                return Optional.empty();
            }
            Object key = OpenConnections.key(file, found);
            return OpenConnections.whileClosed(key, () -> readOpened(file, key), Optional.empty());
        } catch (IOException | OverlappingFileLockException e) {
            return Optional.empty();
        }
    }

    private static Optional<byte[]> readOpened(Path file, Object key) throws IOException {
        FileChannel channel = FileChannel.open(file, StandardOpenOption.READ);
        boolean isTheSame = false;
        try {
            isTheSame = key.equals(OpenConnections.key(file, Files.readAttributes(file, BasicFileAttributes.class)));
            return isTheSame ? readLocked(file, channel) : Optional.empty();
        } finally {
            if (isTheSame) {
                channel.close();
            } else {
                KEPT_OPEN.add(channel);
            }
        }
    }

    private static Optional<byte[]> readLocked(Path file, FileChannel channel) throws IOException {
        if (!isLocked(channel) || !isAlone(file)) {
            return Optional.empty();
        }
        return Optional.of(bytes(channel));
    }

    /** As SQLite does: past who waits for writing only when nobody does. */
    static boolean isLocked(FileChannel channel) throws IOException {
        try (FileLock pending = channel.tryLock(PENDING, 1, true)) {
            return pending != null && channel.tryLock(SHARED, SHARED_BYTES, true) != null;
        }
    }

    /** An empty log counts as one: what it is there for SQLite knows. */
    private static boolean isAlone(Path file) {
        return Files.notExists(RecordingFile.log(file)) && Files.notExists(RecordingFile.journal(file));
    }

    /** In pieces: the system's buffer for a piece stays in the processor's memory. */
    private static byte[] bytes(FileChannel channel) throws IOException {
        byte[] bytes = new byte[Math.toIntExact(channel.size())];
        for (int at = 0; at < bytes.length; ) {
            int read = channel.read(ByteBuffer.wrap(bytes, at, Math.min(CHUNK, bytes.length - at)), at);
            if (read < 0) {
                throw new EOFException("cut off while it was read");
            }
            at += read;
        }
        return bytes;
    }
}
