package tautlog.logger.drive;

import com.sun.nio.file.ExtendedOpenOption;
import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import tautlog.logger.drive.DriveState.ReadBack;

/** What really stands on a drive, past the system's memory of what was written to it. */
final class Medium {
    private static final int PIECE = 256 << 10; // a multiple of every block size in use

    private Medium() {}

    /** Waits until the drive says that it has the file, or the names of a folder. */
    static void flush(Path fileOrFolder) throws IOException {
        try (FileChannel channel = FileChannel.open(fileOrFolder, StandardOpenOption.READ)) {
            channel.force(true);
        }
    }

    /**
     * Reads a flushed file from the drive and compares it with what was written.
     *
     * @return {@link ReadBack#MEMORY} when the file system does not let us past the memory; then nothing was compared
     * @throws IOException also when the drive gives back something else
     */
    static ReadBack compare(Path file) throws IOException {
        try (FileChannel written = FileChannel.open(file, StandardOpenOption.READ)) {
            Optional<FileChannel> stored = pastTheMemory(file);
            if (stored.isEmpty()) {
                return ReadBack.MEMORY;
            }
            try (FileChannel drive = stored.get()) {
                requireEqual(file, written, drive);
            }
            return ReadBack.DRIVE;
        }
    }

    /** Empty when this kind of file system knows no O_DIRECT (EINVAL, open(2)); that the file can be opened at all is known. */
    private static Optional<FileChannel> pastTheMemory(Path file) throws IOException {
        try {
            return Optional.of(FileChannel.open(file, StandardOpenOption.READ, ExtendedOpenOption.DIRECT));
        } catch (UnsupportedOperationException | FileSystemException noWayPast) {
            return Optional.empty();
        }
    }

    private static void requireEqual(Path file, FileChannel written, FileChannel drive) throws IOException {
        int block = Math.toIntExact(Files.getFileStore(file).getBlockSize());
        ByteBuffer there = ByteBuffer.allocateDirect(PIECE + block).alignedSlice(block);
        ByteBuffer here = ByteBuffer.allocate(PIECE);
        long size = written.size();
        for (long at = 0; at < size; at += PIECE) {
            read(drive, there.clear().limit(PIECE), at, size);
            read(written, here.clear(), at, size);
            if (!there.equals(here)) {
                throw new IOException(file + ": the drive gives back other bytes than were written, at " + at
                        + " or later. Take another drive.");
            }
        }
    }

    private static void read(FileChannel channel, ByteBuffer piece, long at, long size) throws IOException {
        long wanted = Math.min(PIECE, size - at);
        while (piece.position() < wanted) {
            if (channel.read(piece, at + piece.position()) < 0) {
                throw new EOFException("the file became shorter while it was read");
            }
        }
        piece.flip().limit((int) wanted);
    }
}
