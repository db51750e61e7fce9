package tautlog.logger.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The program on the winch. */
@Command(
        name = "tautlogd",
        mixinStandardHelpOptions = true,
        versionProvider = ProgramVersion.class,
        header = {
            "Examples:",
            "  tautlogd ports                         which serial ports there are",
            "  tautlogd run --config logger.toml      records until stopped",
            ""
        },
        description = {
            "Records the pull in a skidding winch's line and the speed of its shaft.",
            "It measures; it holds nothing back and stops nothing. The maker's marking on the gear, local rules and"
                    + " licensed practice come first. A slack line or a clear beacon is no permission to approach."
        },
        subcommands = {
            RunCommand.class,
            ListenCommand.class,
            CalibrateCommand.class,
            PortsCommand.class,
            StatusCommand.class,
            MarkCommand.class,
            SimulateCommand.class
        })
public final class TautlogDaemon implements Runnable {
    @Spec
    private CommandSpec spec = CommandSpec.create();

    /** Runs the command that {@code args} name and ends the program with its exit code. */
    public static void main(String[] args) {
        System.exit(commandLine().execute(args));
    }

    static CommandLine commandLine() {
        return new CommandLine(new TautlogDaemon())
                .setExecutionExceptionHandler(new Refusals())
                .setCaseInsensitiveEnumValuesAllowed(true);
    }

    @Override
    public void run() {
        throw new ParameterException(spec.commandLine(), "a command is missing");
    }
}
