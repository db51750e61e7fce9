package tautlog.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tautlog.config.ConfigException;
import tautlog.desk.gear.UsedGear;
import tautlog.desk.page.Ink;
import tautlog.desk.service.Machines;
import tautlog.desk.service.ServiceState;
import tautlog.desk.use.OutingUse;
import tautlog.desk.use.UseHistory;
import tautlog.service.Ledger;
import tautlog.service.ServicePlan;

/** What {@code service list} and {@code service forecast} are made from. */
final class ServiceSources {
    @Parameters(arity = "1..*", paramLabel = "FILES", description = "Recordings, or folders of them; one history.")
    private List<Path> files = List.of();

    @Option(names = "--tasks", required = true, paramLabel = "F", description = "The tasks, service.toml.")
    private Path tasks = Path.of("");

    @Option(names = "--ledger", paramLabel = "F", description = "The ledger, ledger.jsonl.")
    private @Nullable Path ledger;

    @Option(
            names = "--as-of",
            paramLabel = "T",
            description = "As it stood at T (ISO 8601; local without zone), not now.")
    private @Nullable String asOf;

    @Option(names = "--zone", paramLabel = "ZONE", description = "Time zone of the days instead of this computer's.")
    private @Nullable String zone;

    @Option(names = "--json", description = "Print one JSON document instead of text.")
    private boolean json;

    @Mixin
    private UseOptions use = new UseOptions();

    /** How tasks and gear stand at one time. */
    record Standings(ServiceState state, UsedGear gear) {}

    /** Whether the answer is for a program. */
    boolean json() {
        return json;
    }

    /** Reads everything; {@code err} is told how far it is where somebody looks on. */
    Standings read(Ink ink, PrintWriter err) throws IOException, UsageException, ConfigException {
        ZoneId at = zone == null ? ZoneId.systemDefault() : LocalTime.zone("--zone", zone);
        Instant now = Instant.now();
        Optional<Instant> asked = asOf == null ? Optional.empty() : Optional.of(LocalTime.instant("--as-of", asOf, at));
        ServicePlan plan = plan(tasks);
        Ledger entries = ledger == null ? Ledger.EMPTY : NamedLedger.read(ledger, at, now);
        UseHistory history = UseHistory.of(files, use.settings(ink, err));
        ServiceState.Known known = new ServiceState.Known(Machines.of(history), history.notes(), history.leftOut());
        Ledger held = asked.map(entries::until).orElse(entries);
        ServiceState state = ServiceState.of(
                asked.map(known::until).orElse(known), plan, held, Optional.ofNullable(ledger), asked.orElse(now), at);
        return new Standings(state, UsedGear.of(begun(history, asked), history.latestRigs(), held, at));
    }

    /** One without a clock may have begun by then. */
    private static List<OutingUse> begun(UseHistory history, Optional<Instant> end) {
        return history.outings().stream()
                .filter(use -> end.isEmpty()
                        || use.start().map(start -> !start.isAfter(end.get())).orElse(true))
                .toList();
    }

    /** 3 when recordings or lines of the ledger could not be read, which {@code err} is told. */
    static int whole(ServiceState state, PrintWriter err) {
        return Exits.whole(state.leftOut(), state.ledger(), err);
    }

    static ServicePlan plan(Path file) throws IOException, ConfigException, UsageException {
        return ServicePlan.parse(
                file.toString(),
                TextFile.read("--tasks", file, "Give the tasks; samples/service.toml is a set to start from."));
    }
}
