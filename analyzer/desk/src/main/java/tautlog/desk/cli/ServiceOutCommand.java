package tautlog.desk.cli;

import java.io.IOException;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import tautlog.config.ConfigException;
import tautlog.service.Act;

/** Enters that gear must not be used until a competent person has inspected it. */
@Command(
        name = "out-of-service",
        headerHeading = "Examples:%n"
                + "  tautlog service out-of-service rope --ledger ledger.jsonl --by Wren%n"
                + "  tautlog service out-of-service choker --piece red --ledger ledger.jsonl --at 2026-05-04T12:00%n"
                + "%n",
        header = "Enters that gear must not be used until a competent person has inspected it.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class)
final class ServiceOutCommand implements Callable<Integer> {
    @Mixin
    private GearOptions gear = new GearOptions();

    @Mixin
    private TimedEntry entry = new TimedEntry();

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() throws IOException, UsageException, ConfigException {
        return gear.enter(new Act.OutOfService(gear.piece()), entry, spec);
    }
}
