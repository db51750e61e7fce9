package tautlog.desk.cli;

import java.io.IOException;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import tautlog.config.ConfigException;
import tautlog.service.Act;

/** Enters that gear was taken into use, new or in place of other. */
@Command(
        name = "fitted",
        headerHeading = "Examples:%n"
                + "  tautlog service fitted rope --ledger ledger.jsonl --by Wren%n"
                + "  tautlog service fitted choker --piece red --ledger ledger.jsonl --by Wren --at 2026-05-04T12:00%n"
                + "%n",
        header = "Enters that gear was taken into use, new or in place of other.",
        description = {"", "What puts gear into service needs the name of who answers for it: --by is required.", ""},
        mixinStandardHelpOptions = true,
        versionProvider = Version.class)
final class ServiceFittedCommand implements Callable<Integer> {
    @Mixin
    private GearOptions gear = new GearOptions();

    @Mixin
    private TimedEntry entry = new TimedEntry();

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() throws IOException, UsageException, ConfigException {
        entry.requireName("Gear that is put into service");
        return gear.enter(new Act.Fitted(gear.piece()), entry, spec);
    }
}
