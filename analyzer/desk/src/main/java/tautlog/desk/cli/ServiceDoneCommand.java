package tautlog.desk.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tautlog.config.ConfigException;
import tautlog.config.NearestKey;
import tautlog.service.Act;
import tautlog.service.ServicePlan;
import tautlog.service.Task;

/** Enters that a task was done. */
@Command(
        name = "done",
        headerHeading = "Examples:%n"
                + "  tautlog service done joint-crosses --ledger ledger.jsonl --by Wren%n"
                + "  tautlog service done joint-crosses --ledger ledger.jsonl --at 2026-05-04T17:30 --tasks service.toml%n"
                + "%n",
        header = "Enters that a task was done.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class)
final class ServiceDoneCommand implements Callable<Integer> {
    @Parameters(paramLabel = "TASK", description = "Its id in service.toml.")
    private String task = "";

    @Option(names = "--tasks", paramLabel = "F", description = "service.toml, to refuse a task that is not in it.")
    private @Nullable Path tasks;

    @Mixin
    private TimedEntry entry = new TimedEntry();

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() throws IOException, UsageException, ConfigException {
        if (tasks == null) {
            spec.commandLine().getErr().println("Not checked whether there is such a task: give --tasks service.toml.");
        } else {
            refuseUnknown(ServiceSources.plan(tasks));
        }
        return entry.enter(new Act.Done(task), spec.commandLine().getOut());
    }

    private void refuseUnknown(ServicePlan plan) throws UsageException {
        if (plan.task(task).isPresent()) {
            return;
        }
        Optional<String> near =
                NearestKey.to(task, plan.tasks().stream().map(Task::id).toList());
        throw new UsageException("There is no task \"" + task + "\" in " + tasks + ".\n  "
                + near.map(id -> "Did you mean " + id + "? ").orElse("") + "It has: "
                + String.join(", ", plan.tasks().stream().map(Task::id).toList()) + ".");
    }
}
