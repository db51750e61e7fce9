package tautlog.logger.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import tautlog.logger.simulate.Scenario;
import tautlog.logger.simulate.Simulator;

/** A simulated instrument on a pseudo-terminal. */
@Command(
        name = "simulate",
        headerHeading = "Examples:%n" + "  tautlogd simulate --scenario slack-snap --port-link instrument%n"
                + "  tautlogd simulate --scenario afternoon --port-link instrument --pace 300%n" + "%n",
        header = "Plays a winch, a line and a log, for trying and training.",
        description = {
            "Plays a scenario of a winch, a line and a log on a serial port made of software (Linux).",
            "It waits until a logger opens the port, and hangs up at the end: run the logger with",
            "--until-closed. What really happened goes to a truth file beside the port."
        },
        mixinStandardHelpOptions = true)
final class SimulateCommand implements Callable<Integer> {
    private static final int DONE = 0;
    private static final int PORT_NOT_USED = 3;

    @Option(
            names = "--scenario",
            required = true,
            paramLabel = "NAME",
            description =
                    "afternoon, slack-snap, redirect, stump, parting, cable-fault, stall or blackout (samples/README.md).")
    private String scenario = "";

    @Option(names = "--port-link", required = true, paramLabel = "PATH", description = "Link the port here.")
    private Path portLink = Path.of("");

    @Option(
            names = "--pace",
            paramLabel = "N",
            defaultValue = "1",
            description = "Simulated seconds per second, 1 to 1000. Default: ${DEFAULT-VALUE}.")
    private int pace;

    @Option(
            names = "--seed",
            paramLabel = "N",
            defaultValue = "1",
            description = "The same seed gives the same bytes. Default: ${DEFAULT-VALUE}.")
    private long seed;

    @Option(
            names = "--truth",
            paramLabel = "FILE",
            description = "Write what really happened here. Default: the port's link with .truth.json added.")
    private @Nullable Path truth;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() throws IOException, InterruptedException {
        PrintWriter err = spec.commandLine().getErr();
        Simulator simulator = new Simulator(request(), err, hasTerminal());
        return simulator.run().isPresent() ? DONE : PORT_NOT_USED;
    }

    @SuppressWarnings("SystemConsoleNull") // from Java 22 on a line of progress may end up in a file; no harm
    private static boolean hasTerminal() {
        return System.console() != null;
    }

    private Simulator.Request request() {
        Scenario named = Scenario.named(scenario)
                .orElseThrow(
                        () -> wrong("--scenario: \"" + scenario + "\" is no scenario. Allowed: " + Scenario.names()));
        if (pace < 1 || pace > 1_000) {
            throw wrong("--pace: " + pace + " is out of range. Allowed: 1 to 1000.");
        }
        Path to = truth == null ? Simulator.Request.truthBeside(portLink) : truth;
        return new Simulator.Request(named, portLink, pace, seed, to);
    }

    private ParameterException wrong(String message) {
        return new ParameterException(spec.commandLine(), message);
    }
}
