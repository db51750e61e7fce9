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
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import tautlog.config.ConfigException;
import tautlog.logger.control.ControlClient;
import tautlog.logger.control.MarkAnswer;

/** Tells the running logger something for the recording. */
@Command(
        name = "mark",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n" + "  tautlogd mark --config logger.toml --hookup round-the-corner%n"
                + "  tautlogd mark --config logger.toml --note \"butt against the spruce stump\"%n" + "%n",
        header = "Notes a hookup or words in the running recording.",
        description = "Tells the running logger which hookup is on, or leaves a note at this moment; both go into the"
                + " recording.")
final class MarkCommand implements Callable<Integer> {
    private static final Gson JSON =
            new GsonBuilder().setPrettyPrinting().serializeNulls().create();

    @Mixin
    private ConfigOption config = new ConfigOption();

    @Option(names = "--hookup", paramLabel = "ID", description = "A hookup of the rig, on from now on.")
    private Optional<String> hookup = Optional.empty();

    @Option(names = "--note", paramLabel = "TEXT", description = "Words for whoever reads the recording.")
    private Optional<String> note = Optional.empty();

    @Option(names = "--json", description = "Prints one JSON document.")
    private boolean json;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() throws ConfigException, IOException {
        if (hookup.isEmpty() && note.isEmpty()) {
            throw new ParameterException(spec.commandLine(), "give --hookup ID, --note TEXT or both");
        }
        Path recordings = config.load().config().recordings();
        MarkAnswer answer = new ControlClient(recordings)
                .mark(hookup, note)
                .orElseThrow(() -> new IOException(
                        "no logger runs on " + recordings + "; nothing was noted. Start `tautlogd run` first."));
        if (json) {
            spec.commandLine().getOut().println(JSON.toJson(document(answer)));
        } else if (answer.accepted()) {
            spec.commandLine().getOut().println(answer.words());
        }
        if (!answer.accepted()) {
            spec.commandLine().getErr().println("tautlogd: " + answer.words());
            return ExitCode.USAGE;
        }
        return ExitCode.DONE;
    }

    private static JsonObject document(MarkAnswer answer) {
        JsonObject document = new JsonObject();
        document.addProperty("schema", 1);
        document.addProperty("accepted", answer.accepted());
        document.addProperty("at_number", answer.atNumber().orElse(null));
        document.addProperty("words", answer.words());
        return document;
    }
}
