package tautlog.logger.cli;

import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tautlog.config.ConfigException;
import tautlog.logger.config.Installation;
import tautlog.logger.control.ControlClient;
import tautlog.logger.control.StatusFile;

/** Says what the logger is doing, or was doing when it stopped. */
@Command(
        name = "status",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n" + "  tautlogd status --config logger.toml%n"
                + "  tautlogd status --config logger.toml --json%n" + "%n",
        header = "Says what the logger is doing, or did last.",
        description = "Says what the running or last logger was doing: last sample, faults by kind, losses, disk, lag.")
final class StatusCommand implements Callable<Integer> {
    private static final Gson JSON =
            new GsonBuilder().setPrettyPrinting().serializeNulls().create();

    @Mixin
    private ConfigOption config = new ConfigOption();

    @Option(names = "--json", description = "Prints one JSON document.")
    private boolean json;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() throws ConfigException, IOException {
        Installation installation = config.load();
        Path recordings = installation.config().recordings();
        Optional<JsonObject> running = new ControlClient(recordings).status();
        Optional<JsonObject> known = running.isPresent() ? running : new StatusFile(recordings).read();
        JsonObject status = known.orElseThrow(() -> new IOException(
                "no logger runs on " + recordings + " and none ever did here." + " Start `tautlogd run`."));
        spec.commandLine()
                .getOut()
                .print(
                        json
                                ? JSON.toJson(status) + "\n"
                                : StatusText.of(status, installation.rig().units()));
        spec.commandLine().getOut().flush();
        return ExitCode.DONE;
    }
}
