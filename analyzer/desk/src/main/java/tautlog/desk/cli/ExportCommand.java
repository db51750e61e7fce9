package tautlog.desk.cli;

import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
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
import tautlog.desk.progress.Kept;
import tautlog.desk.progress.WhenStopped;
import tautlog.desk.report.LeftOut;

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
            "known; a gap has no rows. What stands under F is replaced once the table is whole, and",
            "refused when it is write-protected. Exit 3 when a recording, an outing or a block of one",
            "could not be read and was left out.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class)
final class ExportCommand implements Callable<Integer> {
    @Parameters(arity = "1..*", paramLabel = "FILES", description = "Recordings, or folders of them; one history.")
    private List<Path> files = List.of();

    @Option(names = "--csv", paramLabel = "F", description = "The table as text; - for the standard output.")
    private @Nullable String csv;

    @Option(names = "--parquet", paramLabel = "F", description = "The table as a Parquet file.")
    private @Nullable String parquet;

    @Option(names = "--seconds", description = "One row a second instead of one a sample.")
    private boolean seconds;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() throws IOException, UsageException {
        if ((csv == null) == (parquet == null)) {
            throw new UsageException("Where to?\n  Give either --csv F or --parquet F.");
        }
        LeftOut leftOut = csv != null && Output.isStandard(csv) ? standard() : file();
        return Exits.whole(leftOut, spec.commandLine().getErr());
    }

    private LeftOut standard() throws IOException, UsageException {
        CommandLine line = spec.commandLine();
        WhenStopped stopped = Watched.saying(Kept.PART_OF_TABLE, line.getErr());
        try (Writer out = Output.open("--csv", "-", line.getOut())) {
            return write(new CsvTables(out));
        } finally {
            stopped.workIsOver();
        }
    }

    private LeftOut file() throws IOException, UsageException {
        TableFile table = TableFile.of(target());
        WhenStopped stopped = WhenStopped.does(
                () -> Watched.say(table.discard(), spec.commandLine().getErr()));
        LeftOut leftOut;
        try {
            leftOut = writtenOrDiscarded(table);
        } finally {
            stopped.workIsOver();
        }
        table.whole();
        return leftOut;
    }

    private Path target() throws UsageException {
        if (csv != null) {
            return Output.file("--csv", csv);
        }
        if (parquet == null || Output.isStandard(parquet)) {
            throw new UsageException("--parquet: a Parquet file does not go to the standard output.\n  Give a file.");
        }
        return Output.file("--parquet", parquet);
    }

    private LeftOut writtenOrDiscarded(TableFile table) throws IOException {
        try {
            LeftOut leftOut = written(table.begin());
            table.flush();
            return leftOut;
        } catch (IOException e) {
            table.discard();
            throw table.named(e);
        } catch (RuntimeException e) {
            table.discard();
            throw e;
        }
    }

    private LeftOut written(Path target) throws IOException {
        if (parquet != null) {
            return write(new ParquetTables(target));
        }
        try (Writer out = Files.newBufferedWriter(target, StandardCharsets.UTF_8)) {
            return write(new CsvTables(out));
        }
    }

    private LeftOut write(Tables tables) throws IOException {
        try (History history = History.open(files)) {
            Export export = new Export(history, tables);
            if (seconds) {
                export.seconds();
            } else {
                export.samples();
            }
            return export.leftOut();
        }
    }
}
