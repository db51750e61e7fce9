package tautlog.desk.disk;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * A file of lines in UTF-8 that are only ever added, under a lock, and lie on the disk before {@link #append} returns. What a kill or a power
 * cut leaves of a line stays where it is; the next line begins on a line of its own. Safe for several programs, and for several threads
 * through one object.
 */
public final class LineFile {
    private final Path file;
    private final long largestBytes;

    /** Of any size. */
    public LineFile(Path file) {
        this(file, Long.MAX_VALUE);
    }

    /** @param largestBytes beyond which it is neither read nor added to */
    public LineFile(Path file, long largestBytes) {
        this.file = file;
        this.largestBytes = largestBytes;
    }

    public Path path() {
        return file;
    }

    public boolean exists() {
        return Files.isRegularFile(file);
    }

    /** All of it. */
    public byte[] bytes() throws IOException {
        if (Files.size(file) > largestBytes) {
            throw full();
        }
        return Files.readAllBytes(file);
    }

    /**
     * Adds a line; makes the file when there is none, but no folder. When it returns, the line is on the disk; when it throws, nothing was
     * added.
     *
     * @param line without its line feed; holds none
     */
    public synchronized void append(String line) throws IOException {
        boolean isNew = !exists();
        try (FileChannel channel =
                FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE)) {
            FileLock lock = channel.lock();
            add(channel, line);
            lock.release();
        }
        if (isNew) {
            syncFolder();
        }
    }

    private void add(FileChannel channel, String line) throws IOException {
        long end = channel.size();
        byte[] bytes = ((endsInALine(channel, end) ? "" : "\n") + line + "\n").getBytes(StandardCharsets.UTF_8);
        if (bytes.length > largestBytes - end) {
            throw full();
        }
        try {
            write(channel, end, bytes);
            channel.force(true);
        } catch (IOException e) {
            channel.truncate(end); // a full disk: half a line is of no use to anybody
            throw e;
        }
    }

    private IOException full() {
        return new IOException(
                file.getFileName() + " may not be larger than " + largestBytes + " bytes; move it away.");
    }

    private static boolean endsInALine(FileChannel channel, long end) throws IOException {
        ByteBuffer last = ByteBuffer.allocate(1);
        return end == 0 || (channel.read(last, end - 1) == 1 && last.get(0) == '\n');
    }

    private static void write(FileChannel channel, long at, byte[] bytes) throws IOException {
        ByteBuffer buffer = ByteBuffer.wrap(bytes);
        while (buffer.hasRemaining()) {
            channel.write(buffer, at + buffer.position());
        }
    }

    /** Else a power cut may take the new file's name. The line itself is on the disk already: it must not seem to have failed. */
    private void syncFolder() {
        try (FileChannel folder = FileChannel.open(file.toAbsolutePath().getParent(), StandardOpenOption.READ)) {
            folder.force(true);
        } catch (IOException e) {
            return; // some systems open no folder
        }
    }
}
