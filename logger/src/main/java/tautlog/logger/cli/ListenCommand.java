package tautlog.logger.cli;

import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tautlog.config.ConfigException;
import tautlog.logger.config.Installation;
import tautlog.logger.port.SerialInstrumentPort;
import tautlog.logger.run.LineWatch;

/** Shows what comes in, for checking the wiring. */
@Command(
        name = "listen",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n" + "  tautlogd listen --config logger.toml%n"
                + "  tautlogd listen --config logger.toml --seconds 10%n" + "%n",
        header = "Shows live readings, for checking the wiring.",
        description = {
            "Shows live readings, a line each second, until stopped or the port closes. Records nothing.",
            "Keep out of the bight and two tree lengths clear while the line may be loaded; stop the engine before"
                    + " touching the shaft."
        })
final class ListenCommand implements Callable<Integer> {
    @Mixin
    private ConfigOption config = new ConfigOption();

    @Option(names = "--seconds", paramLabel = "N", description = "Stops after so many lines.")
    private Optional<Integer> seconds = Optional.empty();

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() throws ConfigException, IOException, InterruptedException {
        Installation installation = config.load();
        LineWatch watch = new LineWatch(
                installation, new SerialInstrumentPort(installation.config().line()));
        watch.show(spec.commandLine().getOut(), seconds.orElse(Integer.MAX_VALUE));
        return ExitCode.DONE;
    }
}
