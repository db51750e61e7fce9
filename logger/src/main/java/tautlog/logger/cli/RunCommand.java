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
import tautlog.logger.run.LoggerRun;
import tautlog.logger.run.LoggerRun.Until;

/** Records until stopped. */
@Command(
        name = "run",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n" + "  tautlogd run --config logger.toml%n"
                + "  tautlogd run --config demo/logger.toml --until-closed%n" + "%n",
        header = "Records until stopped.",
        description = "Records until stopped (Ctrl-C); opens the port again when it vanishes.")
final class RunCommand implements Callable<Integer> {
    private static final long CLOSING_MILLIS = 30_000;

    @Mixin
    private ConfigOption config = new ConfigOption();

    @Option(
            names = "--until-closed",
            description = "Ends when the port's other end is closed: for simulated and replayed instruments.")
    private boolean untilClosed;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() throws ConfigException, IOException, InterruptedException {
        Installation installation = config.loadToRecord();
        installation.requirePublishingFiles();
        LoggerRun run = new LoggerRun(
                installation,
                new SerialInstrumentPort(installation.config().line()),
                untilClosed ? Until.CLOSED : Until.STOPPED,
                ProgramVersion.words());
        Thread atStop = new Thread(() -> closeInOrder(run), "stop");
        Runtime.getRuntime().addShutdownHook(atStop);
        try {
            run.run();
        } finally {
            forget(atStop);
        }
        Optional<Throwable> bug = run.bug();
        return bug.isPresent() ? Refusals.bug(bug.get(), spec.commandLine().getErr()) : ExitCode.DONE;
    }

    /** Ctrl-C, SIGTERM, shutdown of the computer. */
    private void closeInOrder(LoggerRun run) {
        run.stop();
        try {
            boolean closed = run.awaitFinished(CLOSING_MILLIS);
            spec.commandLine().getErr().println(closed ? ending(run) : "the disk is too slow to close: " + where(run));
            spec.commandLine().getErr().flush();
        } catch (InterruptedException hurried) {
            Thread.currentThread().interrupt();
        }
    }

    private static String ending(LoggerRun run) {
        return run.failure().map(words -> "tautlogd: " + words).orElseGet(() -> "recording closed: " + where(run));
    }

    private static String where(LoggerRun run) {
        return run.recording().orElse("none was begun");
    }

    private static void forget(Thread atStop) {
        try {
            Runtime.getRuntime().removeShutdownHook(atStop);
        } catch (IllegalStateException stopping) {
            return; // it runs already
        }
    }
}
