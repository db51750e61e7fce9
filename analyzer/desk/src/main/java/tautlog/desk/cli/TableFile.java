package tautlog.desk.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import tautlog.desk.progress.Kept;

/**
 * A file that a table is written to: under another name beside it until it is whole, so that half a table never stands under its own, and
 * what stood there stays until then.
 *
 * <p>What is no plain file (a pipe, a device, a link), or lies in a folder where no other may be made, is written to at once.
 */
final class TableFile {
    private static final String ENDING = "-part";

    private final Path file;
    private final Path written;

    private TableFile(Path file, Path written) {
        this.file = file;
        this.written = written;
    }

    static TableFile of(Path file) {
        Path folder = file.toAbsolutePath().resolveSibling(".");
        boolean isThere = Files.exists(file, LinkOption.NOFOLLOW_LINKS);
        boolean isPlain = Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS);
        boolean atOnce = isThere && !(isPlain && Files.isWritable(folder));
        return new TableFile(file, atOnce ? file : file.resolveSibling(file.getFileName() + ENDING));
    }

    /** Where the table is to be written. */
    Path written() {
        return written;
    }

    /** The table is whole and closed: from now on it stands under its name. */
    void whole() throws IOException {
        if (!written.equals(file)) {
            Files.move(written, file, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    /** The table will not be whole. What can be taken away is: says what is left of it. */
    Kept discard() {
        if (written.equals(file)) {
            return Kept.PART_OF_TABLE;
        }
        try {
            Files.deleteIfExists(written);
        } catch (IOException e) {
            return Kept.NOTHING; // it takes room under a name that says so, and the next table replaces it
        }
        return Kept.NOTHING;
    }
}
