package tautlog.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tautlog.config.ConfigException;
import tautlog.config.Reading;
import tautlog.config.Refusal;
import tautlog.desk.gear.GearLife;
import tautlog.desk.page.Ink;
import tautlog.desk.page.TextPage;
import tautlog.desk.service.ServiceJson;
import tautlog.desk.service.ServicePage;
import tautlog.desk.service.ServiceState;
import tautlog.service.Standing;

/** What is due. */
@Command(
        name = "list",
        headerHeading = "Examples:%n"
                + "  tautlog service list recordings/ --tasks service.toml --ledger ledger.jsonl%n"
                + "  tautlog service list recordings/ --tasks service.toml --ledger ledger.jsonl --fail-on overdue%n"
                + "%n",
        header = "What is overdue, due, due soon, not known, not yet due.",
        description = {
            "",
            "Counts what was recorded and what was entered as worked since each task was last done.",
            "What is not known is said; it is never taken as none. Exit 0: done. 1: done, and",
            "something stands at --fail-on or worse. 3: a recording or a line of the ledger could",
            "not be read, and the rest is told.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class)
final class ServiceListCommand implements Callable<Integer>, Inked {
    @Mixin
    private ServiceSources sources = new ServiceSources();

    @Option(
            names = "--fail-on",
            paramLabel = "STANDING",
            description = "End with 1 at overdue, due, soon or unknown; each includes those before.")
    private @Nullable String failOn;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    private Ink ink = Ink.PLAIN;

    @Override
    public void ink(Ink of) {
        ink = of;
    }

    @Override
    public Integer call() throws IOException, UsageException, ConfigException {
        Optional<Standing> worst = worst();
        ServiceSources.Standings standings =
                sources.read(ink, spec.commandLine().getErr());
        ServiceState state = standings.state();
        List<GearLife> lives = standings.gear().lives();
        PrintWriter out = spec.commandLine().getOut();
        out.print(
                sources.json() ? ServiceJson.render(state, lives) : TextPage.render(ServicePage.of(state, lives), ink));
        out.flush();
        int whole = ServiceSources.whole(state, spec.commandLine().getErr());
        boolean found = worst.isPresent()
                && state.tasks().stream().anyMatch(task -> task.standing().compareTo(worst.get()) <= 0);
        return found ? Exits.FOUND : whole;
    }

    private Optional<Standing> worst() throws UsageException {
        if (failOn == null) {
            return Optional.empty();
        }
        try {
            Standing standing = Reading.oneOf(Standing.class).read(failOn);
            if (standing != Standing.LATER) {
                return Optional.of(standing);
            }
        } catch (Refusal refusal) {
            throw new UsageException("--fail-on: " + refusal.found() + ".\n  Allowed: overdue, due, soon, unknown.");
        }
        throw new UsageException(
                "--fail-on: \"later\" is nothing to fail on.\n  Allowed: overdue, due, soon, unknown.");
    }
}
