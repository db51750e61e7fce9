package tautlog.logger.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import tautlog.calibration.CellCalibration;
import tautlog.config.ConfigException;
import tautlog.logger.calibrate.ReadingsFile;
import tautlog.logger.config.CalibrationChoice;
import tautlog.logger.config.LoggerConfig;
import tautlog.logger.port.SerialInstrumentPort;
import tautlog.logger.run.CountWatch;
import tautlog.quantity.ForceUnit;
import tautlog.quantity.QuantityException;
import tautlog.quantity.TimeSpan;

/** Collects calibration readings at the port. */
@Command(
        name = "calibrate",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n" + "  tautlogd calibrate --config logger.toml -o readings.csv%n"
                + "  tautlogd calibrate --config logger.toml --shunt%n" + "%n",
        header = "Collects calibration readings at the port.",
        description = {
            "Type the reference load that hangs (10, 10 kN up, 10 down run2): the program waits until the counts are"
                    + " steady, takes their mean and adds a row to the table. \"shunt\" after the resistor was switched on at the"
                    + " load before; \"done\" ends. Give the table to `tautlog calibrate`. Nothing is recorded, no limit is"
                    + " watched.",
            "Reference loads come from a weighed mass or a better load cell, never from this instrument's own display."
                    + " Keep from under and beside the load, and out of the line of the rope."
        })
final class CalibrateCommand implements Callable<Integer> {
    @Mixin
    private ConfigOption config = new ConfigOption();

    @Option(
            names = {"-o", "--output"},
            paramLabel = "readings.csv",
            description = "The table; one that is there is not overwritten.")
    private Optional<Path> output = Optional.empty();

    @Option(
            names = "--over",
            paramLabel = "TIME",
            defaultValue = "3s",
            description = "How long a load must be steady and is averaged (default: ${DEFAULT-VALUE}).")
    private String over = "";

    @Option(
            names = "--wait",
            paramLabel = "TIME",
            defaultValue = "120s",
            description = "How long to wait for that (default: ${DEFAULT-VALUE}).")
    private String longest = "";

    @Option(
            names = "--unit",
            paramLabel = "U",
            defaultValue = "kN",
            description = "Of loads typed without one: N, kN, daN, kgf, lbf (default: ${DEFAULT-VALUE}).")
    private String unit = "";

    @Option(
            names = "--shunt",
            description = "Only checks the shunt: the slack line, Enter when the resistor is on, the step.")
    private boolean shunt;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @Override
    public Integer call() throws ConfigException, IOException, InterruptedException {
        ForceUnit loads = ForceUnit.of(unit).orElseThrow(() -> wrong("--unit " + unit + ": N, kN, daN, kgf or lbf"));
        BigDecimal overSeconds = seconds("--over", over);
        long waitMillis = seconds("--wait", longest).movePointRight(3).longValue();
        if (output.isEmpty() && !shunt) {
            throw wrong("-o is missing: name the table that the readings go to");
        }
        if (output.isPresent() && Files.exists(output.get())) {
            throw wrong(output.get() + " is there already and is not overwritten: give another name with -o");
        }
        LoggerConfig logger = LoggerConfig.parse(config.file, Files.readString(config.file));
        Optional<BigDecimal> shuntOfTheDay = shuntOfTheDay(logger);
        var port = new SerialInstrumentPort(logger.line());
        try (CountWatch counts = new CountWatch(logger, port, overSeconds)) {
            Optional<ReadingsFile> table =
                    output.isPresent() ? Optional.of(ReadingsFile.create(output.get())) : Optional.empty();
            CalibrationTalk talk = new CalibrationTalk(
                    counts,
                    waitMillis,
                    loads,
                    table,
                    shuntOfTheDay,
                    talkTo(),
                    spec.commandLine().getOut());
            return shunt ? talk.checkShunt(typed()) : talk.takeReadings(typed());
        }
    }

    private static BufferedReader typed() {
        return new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
    }

    /** What is asked stands on stderr, and only where a person sits. */
    private CalibrationTalk.Prompts talkTo() {
        PrintWriter err = spec.commandLine().getErr();
        return new CalibrationTalk.Prompts(err, isTypedAtATerminal());
    }

    /** Asked of the standard input alone: the result may go anywhere. False where the system does not say. */
    private static boolean isTypedAtATerminal() {
        try {
            String input = Files.readSymbolicLink(Path.of("/proc/self/fd/0")).toString();
            return input.startsWith("/dev/pts/") || input.startsWith("/dev/tty");
        } catch (IOException | UnsupportedOperationException unknown) {
            return false;
        }
    }

    private BigDecimal seconds(String option, String text) {
        try {
            BigDecimal seconds = TimeSpan.parse(text).seconds();
            if (seconds.signum() > 0 && seconds.compareTo(BigDecimal.valueOf(3_600)) <= 0) {
                return seconds;
            }
        } catch (QuantityException unclear) {
            throw wrong(option + ": " + unclear.getMessage());
        }
        throw wrong(option + " " + text + ": above 0 s, at most 1 h");
    }

    private ParameterException wrong(String words) {
        return new ParameterException(spec.commandLine(), words);
    }

    /** Empty when there is no calibration yet, or it was made without a shunt. */
    private static Optional<BigDecimal> shuntOfTheDay(LoggerConfig logger) throws ConfigException, IOException {
        if (logger.calibration() instanceof CalibrationChoice.InFile inFile && Files.exists(inFile.file())) {
            return CellCalibration.parse(inFile.file().toString(), Files.readString(inFile.file()))
                    .shuntStepCounts();
        }
        return Optional.empty();
    }
}
