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

/** What every command that enters something new asks for. */
final class LedgerEntry {
    @Mixin
    private OpenLedger ledger = new OpenLedger();

    @Option(
            names = "--at",
            paramLabel = "T",
            description = "When it was so, not now (ISO 8601; local without zone). A day alone is its beginning, before"
                    + " the work of that day.")
    private @Nullable String at;

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

    /** Adds an entry and says under which id. */
    int enter(Act act, PrintWriter out) throws IOException, UsageException {
        ledger.refuseRecording();
        Instant now = Instant.now();
        ZoneId local = zone();
        Optional<String> earlier =
                replaces == null ? Optional.empty() : Optional.of(OpenLedger.known(replaces, ledger.read(local, now)));
        OpenLedger.About about = new OpenLedger.About(Optional.ofNullable(winch), earlier);
        return ledger.enter(act, when(act, now, local), now, about, out);
    }

    private Instant when(Act act, Instant now, ZoneId local) throws UsageException {
        Instant time = at == null ? now : LocalTime.instant("--at", at, local);
        Instant when = act instanceof Act.Worked worked ? worked.to() : time;
        if (time.isAfter(now)
                || (act instanceof Act.Worked worked && worked.from().isAfter(now))) {
            throw new UsageException("--at: " + (at == null ? when : at)
                    + " is still to come.\n  Enter what was done; is this computer's clock right (" + now + ")?");
        }
        return when;
    }
}
