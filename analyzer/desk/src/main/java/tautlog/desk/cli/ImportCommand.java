package tautlog.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tautlog.config.ConfigException;
import tautlog.desk.importing.Import;
import tautlog.desk.importing.ImportException;
import tautlog.desk.importing.ImportRequest;
import tautlog.desk.importing.ImportResult;
import tautlog.desk.page.Screen;
import tautlog.quantity.ForceUnit;

/** Makes a recording from readings logged elsewhere. */
@Command(
        name = "import",
        headerHeading = "Examples:%n"
                + "  tautlog import log.csv --rig rig.toml -o recordings --time time --force kgf --unit kgf%n"
                + "  tautlog import log.csv.gz --rig rig.toml -o recordings --time 1 --force 3 --unit lbf%n"
                + "%n",
        header = "Makes a recording from readings logged elsewhere.",
        description = {
            "",
            "Makes a recording from readings that were logged elsewhere. Uneven times are kept as",
            "they are; a pause becomes a gap. The recording is marked as imported: it has no chain",
            "of evidence before the import. The forces are taken to be the line's tension, wherever",
            "the rig says that the cell sits.",
            "",
            "Times: 12.5 (seconds), 2026-05-04T07:00:00.125Z, 2026-05-04T07:00:00.125 or",
            "2026-05-04-07:00:00.125 (local, see --zone).",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class)
final class ImportCommand implements Callable<Integer> {
    @Parameters(paramLabel = "READINGS.csv", description = "Comma, semicolon or tab between columns; .gz is unpacked.")
    private Path readings = Path.of("");

    @Option(
            names = "--rig",
            required = true,
            paramLabel = "FILE",
            description = "The winch and its gear; stored with the readings.")
    private Path rig = Path.of("");

    @Option(
            names = {"-o", "--output"},
            required = true,
            paramLabel = "FOLDER",
            description = "Where the recording goes.")
    private Path folder = Path.of("");

    @Option(
            names = "--time",
            required = true,
            paramLabel = "COLUMN",
            description = "Name or number (from 1) of the column of times.")
    private String time = "";

    @Option(
            names = "--force",
            required = true,
            paramLabel = "COLUMN",
            description = "Name or number of the column of forces.")
    private String force = "";

    @Option(names = "--unit", required = true, paramLabel = "UNIT", description = "N, kN, daN, kgf, kg, t, lbf or lb.")
    private String unit = "";

    @Option(
            names = "--rate",
            paramLabel = "HZ",
            description = "Nominal readings a second; default: from the median spacing.")
    private @Nullable BigDecimal rate;

    @Option(names = "--zone", paramLabel = "ZONE", description = "Time zone of local times; default: this computer's.")
    private @Nullable String zone;

    @Option(names = "--start", paramLabel = "T", description = "With times in seconds: when second 0 was.")
    private @Nullable String start;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() throws IOException, UsageException, ConfigException, ImportException {
        ZoneId at = zone == null ? ZoneId.systemDefault() : LocalTime.zone("--zone", zone);
        ForceUnit of = ForceUnit.of(unit)
                .orElseThrow(() -> new UsageException("--unit: \"" + unit
                        + "\" is not a unit of force.\n  Allowed: N, kN," + " daN, kgf, kg, t, lbf, lb."));
        if (!Files.isRegularFile(readings)) {
            throw new UsageException(readings + ": there is no such file.\n  Give a table of readings.");
        }
        RigSource source = RigSource.read(rig);
        Optional<Instant> zero =
                start == null ? Optional.empty() : Optional.of(LocalTime.instant("--start", start, at));
        ImportResult result = new Import(new ImportRequest(
                        readings,
                        time,
                        force,
                        of,
                        Optional.ofNullable(rate),
                        at,
                        zero,
                        source.rig(),
                        source.toml(),
                        folder,
                        Version.text()))
                .run();
        say(result);
        return Exits.DONE;
    }

    private void say(ImportResult result) {
        PrintWriter err = spec.commandLine().getErr();
        err.println(String.format(
                Locale.ROOT,
                "%s at %.3f Hz, %s.",
                Screen.counted(result.readings(), "reading"),
                result.rateHertz(),
                Screen.counted(result.gaps(), "gap")));
        if (result.leftOut() > 0) {
            err.println(
                    Screen.counted(result.leftOut(), "line") + " left out; the first, " + result.leftOutFirst() + ".");
        }
        if (!result.timeKnown()) {
            err.println("The times only count seconds: reports will not know the time of day. Give --start T.");
        }
        spec.commandLine().getOut().println(result.recording());
    }
}
