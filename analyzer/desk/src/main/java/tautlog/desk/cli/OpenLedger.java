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

/** Into which ledger something is entered, by whom, and the entering. */
final class OpenLedger {
    @Option(
            names = "--ledger",
            required = true,
            paramLabel = "F",
            description = "The ledger, ledger.jsonl; it is made when there is none.")
    private Path ledger = Path.of("");

    @Option(names = "--by", paramLabel = "NAME", description = "Who did it.")
    private @Nullable String by;

    @Option(names = "--note", paramLabel = "TEXT", description = "What else should be known.")
    private @Nullable String note;

    /** Refuses an entry that counts only with the name of who answers for it, when there is none. */
    void requireName(String what) throws UsageException {
        if (by().isEmpty()) {
            throw new UsageException("--by: nobody is named.\n  " + what
                    + " counts only with the name of the competent person who answers for it: --by NAME.");
        }
    }

    private Optional<String> by() {
        return Optional.ofNullable(by).map(String::strip).filter(name -> !name.isEmpty());
    }

    /** Whose line an entry is about, and what it corrects. */
    record About(Optional<String> winch, Optional<String> replaces) {}

    /** Adds an entry and says under which id. */
    int enter(Act act, Instant when, Instant now, About about, PrintWriter out) throws IOException {
        Entry entry = new Entry(
                EntryIds.next(now, new SecureRandom()),
                when,
                now,
                by(),
                about.winch(),
                Optional.ofNullable(note),
                about.replaces(),
                act);
        new LedgerFile(ledger).append(entry);
        out.println("Entered into " + ledger + " as " + entry.id()
                + about.replaces().map(id -> ", in place of " + id).orElse("") + ".");
        return Exits.DONE;
    }

    /**
     * What was entered until now.
     *
     * @param zone of times that are written without one
     * @throws UsageException if there is no such file
     */
    Ledger read(ZoneId zone, Instant now) throws IOException, UsageException {
        return NamedLedger.read(ledger, zone, now);
    }

    void refuseRecording() throws UsageException {
        if (ledger.toString().endsWith(RecordingName.ENDING)) {
            throw new UsageException("--ledger: " + ledger
                    + " is named like a recording, which is never written to.\n  Name the ledger, ledger.jsonl.");
        }
    }

    /** The id of the one entry that is meant. */
    static String known(String written, Ledger ledger) throws UsageException {
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
