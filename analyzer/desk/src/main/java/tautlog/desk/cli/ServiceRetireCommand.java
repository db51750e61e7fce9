package tautlog.desk.cli;

import java.io.IOException;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import tautlog.config.ConfigException;
import tautlog.service.Act;

/** Enters that gear was taken away for good. */
@Command(
        name = "retire",
        headerHeading = "Examples:%n"
                + "  tautlog service retire rope --ledger ledger.jsonl --by Wren%n"
                + "  tautlog service retire choker --piece red --ledger ledger.jsonl --at 2026-05-04T12:00%n"
                + "%n",
        header = "Enters that gear was taken away for good.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class)
final class ServiceRetireCommand implements Callable<Integer> {
    @Mixin
    private GearOptions gear = new GearOptions();

    @Mixin
    private TimedEntry entry = new TimedEntry();

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() throws IOException, UsageException, ConfigException {
        return gear.enterGone(new Act.Retired(gear.piece()), entry, spec);
    }
}
