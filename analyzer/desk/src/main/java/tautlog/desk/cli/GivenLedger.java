package tautlog.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import tautlog.service.Ledger;

/** A ledger named on the command line. */
record GivenLedger(String name, Ledger ledger) {
    /**
     * Reads it as it stands now; what is wrong with its lines goes to {@code err}.
     *
     * @param option that named it
     * @throws UsageException if it is not there: a wrong name must not read as "nothing is out of service"
     */
    static GivenLedger read(String option, Path file, ZoneId zone, PrintWriter err) throws IOException, UsageException {
        if (!Files.isRegularFile(file)) {
            throw new UsageException(
                    option + ": there is no file " + file + ".\n  Give the ledger that tautlog service writes.");
        }
        String name = String.valueOf(file.getFileName());
        Ledger ledger = Ledger.read(name, Files.readAllBytes(file), zone, Instant.now());
        ledger.complaints().forEach(complaint -> err.println("tautlog: " + complaint));
        err.flush();
        return new GivenLedger(name, ledger);
    }
}
