package tautlog.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tautlog.config.ConfigException;
import tautlog.desk.calibration.CalibrationDrawings;
import tautlog.desk.calibration.CalibrationJson;
import tautlog.desk.calibration.CalibrationPage;
import tautlog.desk.calibration.CalibrationRequest;
import tautlog.desk.calibration.CalibrationStudy;
import tautlog.desk.calibration.CalibrationToml;
import tautlog.desk.calibration.ReadingsTable;
import tautlog.desk.page.HtmlPage;
import tautlog.desk.page.Ink;
import tautlog.desk.page.TextPage;
import tautlog.quantity.ForceUnit;
import tautlog.rig.Rig;

/** Fits a load cell's calibration and says how good it is. */
@Command(
        name = "calibrate",
        headerHeading = "Examples:%n"
                + "  tautlog calibrate readings.csv -o calibration.toml --reference-percent 0.1%n"
                + "  tautlog calibrate readings.csv -o calibration.toml --rig rig.toml --html calibration.html%n"
                + "%n",
        header = "Fits a load cell's calibration and says how good it is.",
        description = {
            "",
            "Fits counts to reference loads by least squares: a straight line, or a curve with F²",
            "where the line is not good enough, and says why. Tells residuals, repeatability,",
            "hysteresis, zero return, lower limit factor and how far a reading may be off.",
            "",
            "Columns: load, unit, counts and, if known, direction (up, down, shunt), run, time.",
            "A calibration file that is there already is replaced.",
            ""
        },
        mixinStandardHelpOptions = true,
        versionProvider = Version.class)
final class CalibrateCommand implements Callable<Integer>, Inked {
    @Parameters(
            paramLabel = "READINGS.csv",
            description = "Comma, semicolon or tab between columns; # begins a remark.")
    private Path readings = Path.of("");

    @Option(
            names = {"-o", "--output"},
            paramLabel = "F",
            description = "The calibration file; - for the standard output. Without it nothing is written.")
    private @Nullable String output;

    @Option(
            names = "--degree",
            paramLabel = "1|2",
            description = "A straight line, or a curve with F², instead of the lowest that is good enough.")
    private @Nullable Integer degree;

    @Option(
            names = "--reference-percent",
            paramLabel = "P",
            description = "Expanded uncertainty (k = 2) of the reference loads, in percent of them.")
    private @Nullable BigDecimal referencePercent;

    @Option(
            names = "--shunt-step",
            paramLabel = "COUNTS",
            description = "By how much the shunt resistor raises the counts, instead of what the readings say.")
    private @Nullable BigDecimal shuntStep;

    @Option(
            names = "--at",
            paramLabel = "T",
            description = "When the readings were taken (ISO 8601; local without zone), instead of the column time.")
    private @Nullable String at;

    @Option(names = "--rig", paramLabel = "FILE", description = "The winch whose full pull the loads should reach.")
    private @Nullable Path rig;

    @Option(names = "--json", description = "Print one JSON document instead of text.")
    private boolean json;

    @Option(
            names = "--html",
            paramLabel = "F",
            description = "Write a page with drawings too; - for the standard output.")
    private @Nullable String html;

    @Option(names = "--units", paramLabel = "UNIT", description = "kN, daN, kgf, t or lbf instead of the readings'.")
    private @Nullable String units;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    private Ink ink = Ink.PLAIN;

    @Override
    public void ink(Ink of) {
        ink = of;
    }

    @Override
    public Integer call() throws IOException, UsageException, ConfigException {
        refuseTwoDocuments();
        CalibrationRequest request = request();
        Optional<ForceUnit> asked = units == null ? Optional.empty() : Optional.of(ScreenUnit.of("--units", units));
        String text = TextFile.read("READINGS.csv", readings, "Give a table of reference loads and counts.");
        CalibrationStudy study = CalibrationStudy.of(ReadingsTable.parse(readings.toString(), text), request);
        write(study, asked.orElseGet(() -> CalibrationPage.unit(study)));
        return Exits.DONE;
    }

    private void refuseTwoDocuments() throws UsageException {
        List<String> standard = new ArrayList<>();
        if (json) {
            standard.add("--json");
        }
        if (isStandard(html)) {
            standard.add("--html -");
        }
        if (isStandard(output)) {
            standard.add("-o -");
        }
        if (standard.size() > 1) {
            throw new UsageException(String.join(" and ", standard)
                    + ": only one of them can go to the standard output.\n  Give the others a file.");
        }
    }

    private static boolean isStandard(@Nullable String target) {
        return target != null && Output.isStandard(target);
    }

    private CalibrationRequest request() throws IOException, UsageException, ConfigException {
        if (degree != null && degree != 1 && degree != 2) {
            throw new UsageException(
                    "--degree: " + degree + " is not known here.\n  Allowed: 1 (a line), 2 (a curve).");
        }
        if (referencePercent != null
                && (referencePercent.signum() < 0 || referencePercent.compareTo(BigDecimal.valueOf(100)) > 0)) {
            throw new UsageException("--reference-percent: " + referencePercent.toPlainString()
                    + " is out of range.\n  Allowed: from 0 to 100, as the certificate of the reference says.");
        }
        Optional<Instant> taken =
                at == null ? Optional.empty() : Optional.of(LocalTime.instant("--at", at, ZoneId.systemDefault()));
        Optional<Rig> winch =
                rig == null ? Optional.empty() : Optional.of(RigSource.read(rig).rig());
        return new CalibrationRequest(
                degree == null ? OptionalInt.empty() : OptionalInt.of(degree),
                Optional.ofNullable(referencePercent),
                Optional.ofNullable(shuntStep),
                taken,
                winch);
    }

    private void write(CalibrationStudy study, ForceUnit unit) throws IOException, UsageException {
        if (output != null) {
            file("-o", output, CalibrationToml.render(study));
        }
        if (html != null) {
            file("--html", html, HtmlPage.render(CalibrationPage.of(study, unit, CalibrationDrawings.of(study, unit))));
        }
        PrintWriter out = spec.commandLine().getOut();
        if (json) {
            out.print(CalibrationJson.render(study));
        } else if (!isStandard(html) && !isStandard(output)) {
            out.print(TextPage.render(CalibrationPage.of(study, unit, List.of()), ink));
        }
        if (output == null) {
            spec.commandLine().getErr().println("No calibration was written: give -o calibration.toml.");
        }
    }

    private void file(String option, String target, String text) throws IOException, UsageException {
        try (Writer writer = Output.open(option, target, spec.commandLine().getOut())) {
            writer.write(text);
        }
    }
}
