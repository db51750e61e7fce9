package tautlog.desk.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;

/** Service that is not forgotten: what is due, what was done. */
@Command(
        name = "service",
        headerHeading = "Examples:%n"
                + "  tautlog service list recordings/ --tasks service.toml --ledger ledger.jsonl%n"
                + "  tautlog service done joint-crosses --ledger ledger.jsonl --by Wren%n"
                + "%n",
        header = "What is due for service, when it will be, and a ledger of what was done.",
        description = {
            "",
            "Tasks are written in service.toml; what was done, inspected, fitted and worked unlogged",
            "is entered into a ledger: plain lines that are only ever added. Two ledgers are merged",
            "by putting one behind the other. The maker's manual comes first.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        subcommands = {
            ServiceListCommand.class,
            ServiceForecastCommand.class,
            ServiceGearCommand.class,
            ServiceDoneCommand.class,
            ServiceInspectCommand.class,
            ServiceWorkedCommand.class,
            ServiceFittedCommand.class,
            ServiceRetireCommand.class,
            ServiceOutCommand.class,
            ServiceWithdrawCommand.class
        })
final class ServiceCommand implements Runnable {
    @CommandLine.Spec
    private CommandLine.Model.CommandSpec spec = CommandLine.Model.CommandSpec.create();

    /** Without a command: wrong usage. */
    @Override
    public void run() {
        throw new CommandLine.ParameterException(
                spec.commandLine(),
                "Name a command: " + String.join(", ", spec.subcommands().keySet()) + ".");
    }
}
