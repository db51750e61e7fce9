package tautlog.desk.cli;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import tautlog.desk.progress.Kept;

/**
 * A file that a table is written to: under a name of its own beside it until it is whole, so that half a table never stands under its own,
 * and what stood there stays until then.
 *
 * <p>What is no plain file (a pipe, a device, a link), has a second name, or lies in a folder where no other may be made, is written to at
 * once. Messages name the table, never what stands for it meanwhile.
 */
final class TableFile {
    private static final String ENDING = "-part";
    /** Chosen: with four bytes a character and what makes the name unique it stays below the 255 bytes of common file systems. */
    private static final int LONGEST_PREFIX = 40;

    private final Path file;
    private final boolean atOnce;
    private volatile Path written;

    private TableFile(Path file, boolean atOnce) {
        this.file = file;
        this.atOnce = atOnce;
        this.written = file;
    }

    /** @throws AccessDeniedException if the file is there and this user may not write it, or it is write-protected, for root too */
    static TableFile of(Path file) throws IOException {
        if (Files.exists(file) && (!Files.isWritable(file) || TableRights.isProtected(file))) {
            throw new AccessDeniedException(file.toString());
        }
        return new TableFile(file, isWrittenAtOnce(file));
    }

    private static boolean isWrittenAtOnce(Path file) throws IOException {
        if (!Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
            return false;
        }
        return !Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
                || TableRights.names(file) > 1
                || !Files.isWritable(folder(file));
    }

    private static Path folder(Path file) {
        return file.toAbsolutePath().resolveSibling(".");
    }

    /** Where the table is to be written from now on. */
    Path begin() throws IOException {
        if (!atOnce) {
            try {
                written = Files.createTempFile(folder(file), prefix(), ENDING, TableRights.whileWritten(file));
            } catch (FileSystemException e) {
                throw toldOfTable(e);
            }
        }
        return written;
    }

    private String prefix() {
        String name = String.valueOf(file.getFileName());
        int end = name.offsetByCodePoints(0, Math.min(LONGEST_PREFIX, name.codePointCount(0, name.length())));
        return name.substring(0, end) + "-";
    }

    /** The table is written and closed: a power cut does not take it any more. */
    void flush() throws IOException {
        if (!atOnce) {
            try (FileChannel table = FileChannel.open(written, StandardOpenOption.WRITE)) {
                table.force(true);
            }
        }
    }

    /** The table is flushed: from now on it stands under its name, with the rights of what stood there. When it cannot, it is discarded. */
    void whole() throws IOException {
        if (atOnce) {
            return;
        }
        try {
            TableRights.keep(file, written);
            Files.move(written, file, StandardCopyOption.ATOMIC_MOVE);
            written = file;
        } catch (IOException e) {
            discard();
            throw named(e);
        }
    }

    /** The table will not be whole. What can be taken away is, when this made it: says what is left of it. */
    Kept discard() {
        if (atOnce) {
            return Kept.PART_OF_TABLE;
        }
        Path made = written;
        try {
            if (!made.equals(file)) {
                Files.deleteIfExists(made);
            }
        } catch (IOException e) {
            return Kept.NOTHING; // it takes room under a name that says so
        }
        return Kept.NOTHING;
    }

    /** The same trouble; what is told of the file that stands for the table is told of the table. */
    IOException named(IOException trouble) {
        return trouble instanceof FileSystemException disk && written.toString().equals(disk.getFile())
                ? toldOfTable(disk)
                : trouble;
    }

    private IOException toldOfTable(FileSystemException trouble) {
        if (trouble instanceof NoSuchFileException) {
            return new NoSuchFileException(file.toString());
        }
        return trouble instanceof AccessDeniedException
                ? new AccessDeniedException(file.toString())
                : new FileSystemException(file.toString(), null, trouble.getReason());
    }
}
