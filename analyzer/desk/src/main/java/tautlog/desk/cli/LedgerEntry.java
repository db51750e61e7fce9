package tautlog.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import tautlog.config.NearestKey;
import tautlog.desk.service.EntryIds;
import tautlog.desk.service.LedgerFile;
import tautlog.recording.RecordingName;
import tautlog.service.Act;
import tautlog.service.Entry;
import tautlog.service.Ledger;

/** What every command that enters something asks for, and the entering. */
final class LedgerEntry {
    @Option(
            names = "--ledger",
            required = true,
            paramLabel = "F",
            description = "The ledger, ledger.jsonl; it is made when there is none.")
    private Path ledger = Path.of("");

    @Option(
            names = "--at",
            paramLabel = "T",
            description = "When it was so, not now (ISO 8601; local without zone). A day alone is its beginning, before"
                    + " the work of that day.")
    private @Nullable String at;

    @Option(names = "--by", paramLabel = "NAME", description = "Who did it.")
    private @Nullable String by;

    @Option(names = "--winch", paramLabel = "NAME", description = "Of which winch; needed where there are several.")
    private @Nullable String winch;

    @Option(names = "--note", paramLabel = "TEXT", description = "What else should be known.")
    private @Nullable String note;

    @Option(
            names = "--replaces",
            paramLabel = "ID",
            description = "Corrects an earlier entry: this one counts in its place.")
    private @Nullable String replaces;

    @Option(names = "--zone", paramLabel = "ZONE", description = "Time zone of times instead of this computer's.")
    private @Nullable String zone;

    /** Who did it; empty when nobody said. */
    Optional<String> by() {
        return Optional.ofNullable(by).map(String::strip).filter(name -> !name.isEmpty());
    }

    ZoneId zone() throws UsageException {
        return zone == null ? ZoneId.systemDefault() : LocalTime.zone("--zone", zone);
    }

    /** Adds an entry and says under which id. */
    int enter(Act act, PrintWriter out) throws IOException, UsageException {
        return enter(act, Optional.ofNullable(replaces), out);
    }

    int enter(Act act, Optional<String> corrected, PrintWriter out) throws IOException, UsageException {
        refuseRecording();
        Instant now = Instant.now();
        ZoneId local = zone();
        LedgerFile file = new LedgerFile(ledger);
        Optional<String> earlier =
                corrected.isEmpty() ? Optional.empty() : Optional.of(known(corrected.get(), file.read(local, now)));
        Entry entry = new Entry(
                EntryIds.next(now, new SecureRandom()),
                when(act, now, local),
                now,
                by(),
                Optional.ofNullable(winch),
                Optional.ofNullable(note),
                earlier,
                act);
        file.append(entry);
        out.println("Entered into " + ledger + " as " + entry.id()
                + earlier.map(id -> ", in place of " + id).orElse("") + ".");
        return Exits.DONE;
    }

    private void refuseRecording() throws UsageException {
        if (ledger.toString().endsWith(RecordingName.ENDING)) {
            throw new UsageException("--ledger: " + ledger
                    + " is named like a recording, which is never written to.\n  Name the ledger, ledger.jsonl.");
        }
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

    private static String known(String written, Ledger ledger) throws UsageException {
        List<String> meant = EntryIds.meant(written, ledger.ids());
        if (meant.size() == 1) {
            return meant.get(0);
        }
        if (meant.isEmpty()) {
            throw new UsageException("There is no entry \"" + written + "\" in the ledger.\n  "
                    + NearestKey.to(written, ledger.ids())
                            .map(near -> "Did you mean " + near + "? ")
                            .orElse("")
                    + "The id stands first on each of its lines; its last characters are enough.");
        }
        throw new UsageException("\"" + written + "\" may be " + String.join(" or ", meant) + ".\n  Write more of it.");
    }
}
