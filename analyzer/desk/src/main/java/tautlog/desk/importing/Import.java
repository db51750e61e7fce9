package tautlog.desk.importing;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import tautlog.calibration.CellCalibration;
import tautlog.recording.OutingStart;
import tautlog.recording.OutingWriter;
import tautlog.recording.RecordingId;
import tautlog.recording.RecordingName;
import tautlog.recording.RecordingWriter;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.HookupSource;
import tautlog.sample.Instrument;

/**
 * Makes a recording of one outing from a table of readings: read, settle the rate, number, write.
 *
 * <p>One count is one step of the indicator's last digit, so the calibration is the exact size of the unit. Ticks are
 * microseconds since the first reading.
 */
public final class Import {
    private static final long TICK_HZ = 1_000_000;
    private static final String INSTRUMENT = "IMPORT";
    /** Chosen: readings between two commits; a torn import is made again, so nothing hangs on the number. */
    private static final int COMMIT_EVERY = 16_384;

    private final ImportRequest request;

    public Import(ImportRequest request) {
        this.request = request;
    }

    /**
     * Makes the recording; a recording that is there already is never touched, the new one gets another name.
     *
     * @throws ImportException if the readings or what was asked for cannot be used; nothing is written then
     */
    public ImportResult run() throws IOException, ImportException {
        Readings readings = new ReadingsFile(request.readings(), request.zone()).read(request.time(), request.force());
        long rateMillihertz = rateMillihertz(readings);
        long[] numbers = numbers(readings, rateMillihertz);
        Path file = freeName(readings);
        try {
            write(file, readings, numbers, rateMillihertz);
        } catch (IOException e) {
            Files.deleteIfExists(file); // half an import is none
            throw e;
        }
        return result(file, readings, numbers, rateMillihertz);
    }

    private long rateMillihertz(Readings readings) throws ImportException {
        long rate = request.rateHertz()
                .map(hertz -> hertz.movePointRight(3)
                        .setScale(0, RoundingMode.HALF_UP)
                        .longValue())
                .orElseGet(() -> Math.round(1e9 / readings.medianSpacingMicros()));
        if (rate < 1_000 || rate > 4_000_000) {
            String rateText = BigDecimal.valueOf(rate, 3).stripTrailingZeros().toPlainString();
            throw ImportException.usage((request.rateHertz().isPresent()
                            ? "--rate"
                            : request.readings() + ": the median spacing of its " + readings.size() + " readings")
                    + " gives "
                    + rateText + " readings a second; a recording holds 1 to 4000."
                    + "\n  Give --rate HZ within that, or a file with readings that follow closer.");
        }
        return rate;
    }

    /** Each reading's number is the last plus max(1, round(Δt · rate)), halves up: a pause is a gap, jitter is none. */
    static long[] numbers(Readings readings, long rateMillihertz) {
        long[] numbers = new long[readings.size()];
        BigDecimal rate = BigDecimal.valueOf(rateMillihertz, 9); // per microsecond
        for (int i = 1; i < numbers.length; i++) {
            BigDecimal step = BigDecimal.valueOf(readings.micros()[i] - readings.micros()[i - 1])
                    .multiply(rate)
                    .setScale(0, RoundingMode.HALF_UP);
            numbers[i] = numbers[i - 1] + Math.max(1, step.longValueExact());
        }
        return numbers;
    }

    private Path freeName(Readings readings) throws IOException {
        Files.createDirectories(request.folder());
        String winch = request.rig().winch();
        return startMicros(readings)
                .map(micros -> RecordingName.datedAndFree(
                        request.folder(), winch, Instant.EPOCH.plus(micros, ChronoUnit.MICROS)))
                .orElseGet(() -> RecordingName.undated(request.folder(), winch));
    }

    private Optional<Long> startMicros(Readings readings) {
        if (readings.microsAreUtc()) {
            return Optional.of(readings.micros()[0]);
        }
        return request.start().map(start -> ChronoUnit.MICROS.between(Instant.EPOCH, start) + readings.micros()[0]);
    }

    private void write(Path file, Readings readings, long[] numbers, long rateMillihertz) throws IOException {
        try (RecordingWriter recording =
                RecordingWriter.open(file, request.rig().winch(), id(readings))) {
            OutingWriter outing = recording.begin(start(readings, rateMillihertz));
            Rig rig = request.rig();
            boolean byDefault = rig.assumed().isDefault();
            outing.hookup(0, rig.assumed().id(), byDefault ? HookupSource.DEFAULT : HookupSource.LOWEST);
            samples(outing, readings, numbers);
            outing.end();
            outing.commit();
        }
    }

    /** The same readings of the same winch make the same recording, its id included. */
    private String id(Readings readings) {
        long winch = request.rig().winch().hashCode() & 0xffff_ffffL;
        return RecordingId.of((readings.fingerprint() << 32) | winch);
    }

    private OutingStart start(Readings readings, long rateMillihertz) {
        Instrument instrument =
                new Instrument(INSTRUMENT, 0, 0, readings.fingerprint(), TICK_HZ, rateMillihertz, Integer.MAX_VALUE, 0);
        BigDecimal newtonsPerCount = request.unit().newtons().movePointLeft(readings.decimals());
        CellCalibration calibration = CellCalibration.written(new Calibration(BigDecimal.ZERO, newtonsPerCount));
        return new OutingStart(
                instrument, request.rigToml(), calibration, request.program(), OutingStart.Source.IMPORT);
    }

    private void samples(OutingWriter outing, Readings readings, long[] numbers) throws IOException {
        int last = readings.size() - 1;
        for (int i = 0; i <= last; i++) {
            long tick = readings.micros()[i] - readings.micros()[0];
            if (i == 0 || i == last) {
                startMicros(readings).ifPresent(micros -> outing.clock(tick, micros + tick));
            }
            outing.tension(numbers[i], tick, 0, readings.counts(), i, 1);
            if (i % COMMIT_EVERY == COMMIT_EVERY - 1) {
                outing.commit();
            }
        }
    }

    private ImportResult result(Path file, Readings readings, long[] numbers, long rateMillihertz) {
        long gaps = 0;
        for (int i = 1; i < numbers.length; i++) {
            gaps += numbers[i] > numbers[i - 1] + 1 ? 1 : 0;
        }
        Readings.LeftOut out = readings.leftOut();
        String first = out.lines() == 0 ? "" : "line " + out.firstLine() + ": " + out.why();
        return new ImportResult(
                file,
                readings.size(),
                rateMillihertz / 1_000.0,
                gaps,
                startMicros(readings).isPresent(),
                out.lines(),
                first);
    }
}
