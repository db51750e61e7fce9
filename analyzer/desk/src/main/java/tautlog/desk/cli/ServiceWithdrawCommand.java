package tautlog.desk.cli;

import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tautlog.service.Act;

/** Takes an entry back. */
@Command(
        name = "withdraw",
        headerHeading = "Examples:%n"
                + "  tautlog service withdraw 20260504T143005Z-7f3a9c2e1b04 --ledger ledger.jsonl%n"
                + "  tautlog service withdraw 1b04 --ledger ledger.jsonl --note \"wrong winch\"%n"
                + "%n",
        header = "Takes an earlier entry back; its line stays in the ledger.",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class)
final class ServiceWithdrawCommand implements Callable<Integer> {
    @Parameters(paramLabel = "ID", description = "The entry's id, or its last characters.")
    private String id = "";

    @Mixin
    private LedgerEntry entry = new LedgerEntry();

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() throws IOException, UsageException {
        return entry.enter(
                new Act.Withdrawn(), Optional.of(id), spec.commandLine().getOut());
    }
}
