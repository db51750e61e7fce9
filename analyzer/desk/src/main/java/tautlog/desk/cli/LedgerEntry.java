package tautlog.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tautlog.service.Act;
import tautlog.service.Ledger;

/** What every command that enters something new asks for, but for its time. */
final class LedgerEntry {
    @Mixin
    private OpenLedger ledger = new OpenLedger();

    @Option(names = "--winch", paramLabel = "NAME", description = "Of which winch; needed where there are several.")
    private @Nullable String winch;

    @Option(
            names = "--replaces",
            paramLabel = "ID",
            description = "Corrects an earlier entry: this one counts in its place.")
    private @Nullable String replaces;

    @Option(names = "--zone", paramLabel = "ZONE", description = "Time zone of times instead of this computer's.")
    private @Nullable String zone;

    /** See {@link OpenLedger#requireName}. */
    void requireName(String what) throws UsageException {
        ledger.requireName(what);
    }

    ZoneId zone() throws UsageException {
        return zone == null ? ZoneId.systemDefault() : LocalTime.zone("--zone", zone);
    }

    /**
     * Adds an entry and says under which id.
     *
     * @param when not after {@code now}
     */
    int enter(Act act, Instant when, Instant now, PrintWriter out) throws IOException, UsageException {
        ledger.refuseRecording();
        OpenLedger.About about = new OpenLedger.About(Optional.ofNullable(winch), corrected(now));
        return ledger.enter(act, when, now, about, out);
    }

    private Optional<String> corrected(Instant now) throws IOException, UsageException {
        if (replaces == null) {
            return Optional.empty();
        }
        Ledger entered = ledger.read(zone(), now);
        String meant = OpenLedger.known(replaces, entered);
        Optional<String> by = Optional.ofNullable(entered.withdrawn().get(meant));
        if (by.isPresent()) {
            throw new UsageException("--replaces: " + meant
                    + (by.get().equals(meant)
                            ? " takes another entry back."
                            : " is taken back already, by " + by.get() + ".")
                    + "\n  Enter it without --replaces.");
        }
        return Optional.of(meant);
    }

    /**
     * Refuses a time after {@code now}.
     *
     * @param written as somebody wrote it
     */
    static void refuseFuture(String option, String written, Instant time, Instant now) throws UsageException {
        if (time.isAfter(now)) {
            throw new UsageException(option + ": " + written
                    + " is still to come.\n  Enter what was done; is this computer's clock right (" + now + ")?");
        }
    }
}
