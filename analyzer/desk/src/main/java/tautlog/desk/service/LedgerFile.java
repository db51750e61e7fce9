package tautlog.desk.service;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import tautlog.desk.disk.LineFile;
import tautlog.service.Entry;
import tautlog.service.EntryLine;
import tautlog.service.Ledger;

/** The ledger as a file of lines. */
public final class LedgerFile {
    private final LineFile file;

    public LedgerFile(Path file) {
        this.file = new LineFile(file);
    }

    public boolean exists() {
        return file.exists();
    }

    /**
     * Reads all of it.
     *
     * @param zone of times that are written without one
     * @param now see {@link Ledger#read}
     */
    public Ledger read(ZoneId zone, Instant now) throws IOException {
        return Ledger.read(String.valueOf(file.path().getFileName()), file.bytes(), zone, now);
    }

    /** Adds an entry; makes the file when there is none. When it returns, the line is on the disk; when it throws, nothing was added. */
    public void append(Entry entry) throws IOException {
        file.append(EntryLine.of(entry));
    }
}
