package tautlog.desk.cli;

import java.io.IOException;
import java.io.Writer;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tautlog.desk.analysis.History;
import tautlog.desk.exporting.CsvTables;
import tautlog.desk.exporting.Export;
import tautlog.desk.exporting.Tables;
import tautlog.desk.exporting.parquet.ParquetTables;

/** Samples or seconds for other programs. */
@Command(
        name = "export",
        headerHeading = "Examples:%n"
                + "  tautlog export recordings/ --csv samples.csv%n"
                + "  tautlog export recordings/ --parquet seconds.parquet --seconds%n"
                + "%n",
        header = "Samples or seconds as a table for other programs.",
        description = {
            "",
            "Writes every sample (number, tick, UTC, counts, newtons, hookup, limit, share), or with",
            "--seconds every second, as a table: text with one line of names, or a Parquet file with",
            "the same columns. Rig and calibration are those of the day. An empty cell (null) is not",
            "known; a gap has no rows. Exit 3 when a recording, an outing or a block of one could not",
            "be read and was left out.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class)
final class ExportCommand implements Callable<Integer> {
    @Parameters(arity = "1..*", paramLabel = "FILES", description = "Recordings, or folders of them; one history.")
    private List<Path> files = List.of();

    @Option(names = "--csv", paramLabel = "F", description = "The table as text; - for the standard output.")
    private @Nullable String csv;

    @Option(
            names = "--parquet",
            paramLabel = "F",
            description = "The table as a Parquet file, replaced if it is there.")
    private @Nullable String parquet;

    @Option(names = "--seconds", description = "One row a second instead of one a sample.")
    private boolean seconds;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() throws IOException, UsageException {
        if (csv != null && parquet == null) {
            try (History history = History.open(files);
                    Writer out = Output.open("--csv", csv, spec.commandLine().getOut())) {
                return write(history, new CsvTables(out));
            }
        }
        if (parquet != null && csv == null) {
            Path file = parquetFile(parquet);
            try (History history = History.open(files)) {
                return write(history, new ParquetTables(file));
            }
        }
        throw new UsageException("Where to?\n  Give either --csv F or --parquet F.");
    }

    private static Path parquetFile(String target) throws UsageException {
        if (Output.isStandard(target)) {
            throw new UsageException("--parquet: a Parquet file does not go to the standard output.\n  Give a file.");
        }
        return Output.file("--parquet", target);
    }

    private int write(History history, Tables tables) throws IOException {
        Export export = new Export(history, tables);
        if (seconds) {
            export.seconds();
        } else {
            export.samples();
        }
        return Exits.whole(export.leftOut(), spec.commandLine().getErr());
    }
}
