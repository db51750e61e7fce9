package tautlog.desk.service;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.time.ZoneId;
import tautlog.service.Entry;
import tautlog.service.EntryLine;
import tautlog.service.Ledger;

/**
 * The ledger as a file: lines are only ever added, under a lock, and lie on the disk before {@link #append} returns. What a kill or a power
 * cut leaves of a line stays where it is; the next line begins on a line of its own.
 */
public final class LedgerFile {
    private final Path file;

    public LedgerFile(Path file) {
        this.file = file;
    }

    public Path path() {
        return file;
    }

    public boolean exists() {
        return Files.isRegularFile(file);
    }

    /**
     * Reads all of it.
     *
     * @param zone of times that are written without one
     * @param now see {@link Ledger#read}
     */
    public Ledger read(ZoneId zone, Instant now) throws IOException {
        return Ledger.read(String.valueOf(file.getFileName()), Files.readAllBytes(file), zone, now);
    }

    /** Adds a line; makes the file when there is none. When it returns, the line is on the disk; when it throws, nothing was added. */
    public void append(Entry entry) throws IOException {
        boolean isNew = !exists();
        try (FileChannel channel =
                FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE)) {
            FileLock lock = channel.lock();
            add(channel, EntryLine.of(entry));
            lock.release();
        }
        if (isNew) {
            syncFolder();
        }
    }

    private static void add(FileChannel channel, String line) throws IOException {
        long end = channel.size();
        String text = (endsInALine(channel, end) ? "" : "\n") + line + "\n";
        try {
            write(channel, end, text.getBytes(StandardCharsets.UTF_8));
            channel.force(true);
        } catch (IOException e) {
            channel.truncate(end); // a full disk: half a line is of no use to anybody
            throw e;
        }
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
