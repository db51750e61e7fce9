package tautlog.desk.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import tautlog.desk.service.LedgerFile;
import tautlog.service.Ledger;

/** A ledger that was named on the command line. */
final class NamedLedger {
    private NamedLedger() {}

    /**
     * Reads it; lines that cannot be read become complaints of the ledger.
     *
     * @param zone of times that are written without one
     * @throws UsageException if there is no such file
     */
    static Ledger read(Path file, ZoneId zone, Instant now) throws IOException, UsageException {
        LedgerFile named = new LedgerFile(file);
        if (!named.exists()) {
            throw new UsageException("--ledger: there is no file " + file
                    + ".\n  The first tautlog service done makes it; without one leave --ledger out.");
        }
        return named.read(zone, now);
    }
}
