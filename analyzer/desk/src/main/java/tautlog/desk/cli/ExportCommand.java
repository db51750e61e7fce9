package tautlog.desk.cli;

import java.io.IOException;
import java.io.Writer;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tautlog.config.ConfigException;
import tautlog.desk.analysis.History;
import tautlog.desk.exporting.Export;

/** Samples or seconds for other programs. */
@Command(
        name = "export",
        headerHeading = "Examples:%n"
                + "  tautlog export recordings/ --csv samples.csv%n"
                + "  tautlog export recordings/ --csv - --seconds%n"
                + "%n",
        header = "Samples or seconds as a table for other programs.",
        description = {
            "",
            "Writes every sample (number, tick, UTC, counts, newtons, hookup, limit, share), or with",
            "--seconds every second, as a table with one line of names. Rig and calibration are",
            "those of the day. An empty cell is not known. Exit 3 when a recording, an outing or a",
            "block of one could not be read and was left out.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class)
final class ExportCommand implements Callable<Integer> {
    @Parameters(arity = "1..*", paramLabel = "FILES", description = "Recordings, or folders of them; one history.")
    private List<Path> files = List.of();

    @Option(names = "--csv", required = true, paramLabel = "F", description = "The table; - for the standard output.")
    private String csv = "";

    @Option(names = "--seconds", description = "One row a second instead of one a sample.")
    private boolean seconds;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() throws IOException, UsageException, ConfigException {
        try (History history = History.open(files);
                Writer out = Output.open("--csv", csv, spec.commandLine().getOut())) {
            Export export = new Export(history, out);
            if (seconds) {
                export.seconds();
            } else {
                export.samples();
            }
            return Exits.whole(export.leftOut(), spec.commandLine().getErr());
        }
    }
}
