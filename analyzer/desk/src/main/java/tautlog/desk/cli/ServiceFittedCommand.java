package tautlog.desk.cli;

import java.io.IOException;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import tautlog.service.Act;

/** Enters that gear was taken into use, new or in place of other. */
@Command(
        name = "fitted",
        headerHeading = "Examples:%n"
                + "  tautlog service fitted rope --ledger ledger.jsonl --by Wren%n"
                + "  tautlog service fitted choker --piece red --ledger ledger.jsonl --at 2026-05-04T12:00%n"
                + "%n",
        header = "Enters that gear was taken into use, new or in place of other.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class)
final class ServiceFittedCommand implements Callable<Integer> {
    @Mixin
    private GearOptions gear = new GearOptions();

    @Mixin
    private LedgerEntry entry = new LedgerEntry();

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() throws IOException, UsageException {
        return entry.enter(new Act.Fitted(gear.piece()), spec.commandLine().getOut());
    }
}
