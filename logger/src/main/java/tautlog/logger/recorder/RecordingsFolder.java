package tautlog.logger.recorder;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.jspecify.annotations.Nullable;
import tautlog.recording.RecordingException;

/** The recordings folder, held by one logger at a time; the system lets go of it when that logger dies. */
public final class RecordingsFolder implements AutoCloseable {
    private final Path path;
    private final FileChannel channel;

    private RecordingsFolder(Path path, FileChannel channel) {
        this.path = path;
        this.channel = channel;
    }

    /**
     * Takes the folder, making it when it is not there.
     *
     * @throws RecordingException if another logger has it, or it cannot be written
     */
    public static RecordingsFolder claim(Path path) throws RecordingException {
        try {
            Files.createDirectories(path);
            FileChannel channel = FileChannel.open(
                    path.resolve("tautlogd.lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            if (lock(channel) == null) {
                channel.close();
                throw new RecordingException("recordings folder " + path + " is in use by another tautlogd.\n"
                        + "  Stop that one (`tautlogd status` shows it), or name another folder in `recordings`.");
            }
            return new RecordingsFolder(path, channel);
        } catch (RecordingException inUse) {
            throw inUse;
        } catch (IOException refused) {
            throw new RecordingException(
                    "recordings folder " + path + " cannot be written (" + refused + ").\n"
                            + "  Give this user the right to write there, free space, or name another folder in `recordings`.",
                    refused);
        }
    }

    private static @Nullable FileLock lock(FileChannel channel) throws IOException {
        try {
            return channel.tryLock();
        } catch (OverlappingFileLockException heldByThisProgram) {
            return null;
        }
    }

    public Path path() {
        return path;
    }

    @Override
    public void close() throws RecordingException {
        try {
            channel.close();
        } catch (IOException e) {
            throw new RecordingException("recordings folder " + path + " cannot be released: " + e.getMessage(), e);
        }
    }
}
