package tautlog.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.time.Instant;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tautlog.service.Act;

/** What a command asks for that enters something that was so at one time. */
final class TimedEntry {
    @Mixin
    private LedgerEntry entry = new LedgerEntry();

    @Option(
            names = "--at",
            paramLabel = "T",
            description = "When it was so, not now (ISO 8601; local without zone). A day alone is its beginning, before"
                    + " the work of that day.")
    private @Nullable String at;

    /** See {@link OpenLedger#requireName}. */
    void requireName(String what) throws UsageException {
        entry.requireName(what);
    }

    /** Adds an entry and says under which id. */
    int enter(Act act, PrintWriter out) throws IOException, UsageException {
        Instant now = Instant.now();
        return entry.enter(act, when(now), now, out);
    }

    private Instant when(Instant now) throws UsageException {
        if (at == null) {
            return now;
        }
        Instant time = LocalTime.instant("--at", at, entry.zone());
        LedgerEntry.refuseFuture("--at", at, time, now);
        return time;
    }
}
