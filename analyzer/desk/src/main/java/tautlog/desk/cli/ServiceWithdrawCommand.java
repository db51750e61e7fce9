package tautlog.desk.cli;

import java.io.IOException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tautlog.service.Act;
import tautlog.service.Ledger;

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
    private OpenLedger ledger = new OpenLedger();

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() throws IOException, UsageException {
        Instant now = Instant.now();
        Ledger entered = ledger.read(ZoneId.systemDefault(), now);
        String meant = OpenLedger.known(id, entered);
        refuseWithdrawn(meant, Optional.ofNullable(entered.withdrawn().get(meant)));
        OpenLedger.About about = new OpenLedger.About(Optional.empty(), Optional.of(meant));
        return ledger.enter(
                new Act.Withdrawn(), now, now, about, spec.commandLine().getOut());
    }

    private static void refuseWithdrawn(String meant, Optional<String> by) throws UsageException {
        if (by.isPresent()) {
            throw new UsageException(
                    by.get().equals(meant)
                            ? meant + " takes another entry back itself.\n  To have that count again, enter it again."
                            : meant + " is taken back already, by " + by.get()
                                    + ".\n  It counts for nothing; its line stays in the ledger.");
        }
    }
}
