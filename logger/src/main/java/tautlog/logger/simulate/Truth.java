package tautlog.logger.simulate;

import com.google.gson.FieldNamingPolicy;
import com.google.gson.Gson;
import com.google.gson.GsonBuilder;
import com.google.gson.JsonPrimitive;
import com.google.gson.JsonSerializer;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tautlog.sample.Instrument;

/**
 * What really happened in one run of a scenario, taken from the physics and never from a detector's definition.
 *
 * <p>Forces in newtons (the true tension at the winch, before cell, amplifier and noise), times in seconds since the
 * simulation began, lengths in metres. Filled while the simulation runs, written as JSON when it is over; JSON names are
 * these names in lower case with underscores.
 */
public final class Truth {
    private static final Gson GSON = new GsonBuilder()
            .setFieldNamingPolicy(FieldNamingPolicy.LOWER_CASE_WITH_UNDERSCORES)
            .registerTypeAdapter(Double.class, (JsonSerializer<Double>) (number, type, context) -> rounded(number))
            .registerTypeAdapter(double.class, (JsonSerializer<Double>) (number, type, context) -> rounded(number))
            .setPrettyPrinting()
            .disableHtmlEscaping()
            .create();

    /**
     * An instant.
     *
     * @param seconds since the simulation began
     * @param boot 0 for the instrument's first start, 1 after a restart, …
     * @param sample number of the sample taken last, within that boot; −1 while the instrument is off
     */
    public record Moment(double seconds, int boot, long sample) {}

    /** A log from hooking up to taking the choker off. {@code movedM} is towards the winch; loads are the greatest, by gear. */
    public record Haul(
            Moment start,
            Moment end,
            String hookup,
            double logKg,
            double peakN,
            Moment peakAt,
            double movedM,
            Map<String, Double> loadsN) {}

    /** A slack line coming tight: {@code closingMPerS} is how fast its ends part when it does. */
    public record Snap(
            Moment taut, double slackS, double closingMPerS, double stiffnessNPerM, double peakN, Moment peakAt) {}

    /** A butt against a stump. {@code hopped} false: it held to the end of the contact. */
    public record StumpContact(
            Moment start,
            Moment end,
            double speedMPerS,
            double tensionBeforeN,
            double tensionPeakN,
            double pushN,
            boolean hopped) {}

    /** A part that let go ({@code gear}), or a choker that slid off ({@code gear} is {@code ""}). */
    public record LetGo(Moment at, String gear, double loadN, double tensionN, double shaftRpm) {}

    /** The engine could not hold its speed under load, at full throttle. {@code died}: it stopped. */
    public record Stall(Moment start, Moment end, double setRpm, double leastRpm, double tensionN, boolean died) {}

    /** Something wrong with instrument, cable or line, put there on purpose. */
    public record Fault(String kind, Moment start, Moment end, long amount) {}

    /** What the logger's beacon said, when it changed. */
    public record Beacon(double seconds, String state) {}

    /** A press of the mark button. */
    public record Mark(Moment at) {}

    final int schema = 1;
    final String scenario;
    final long seed;
    final double newtonsPerCount;
    final int zeroCounts;
    final List<Instrument> boots = new ArrayList<>();
    final List<Haul> hauls = new ArrayList<>();
    final List<Snap> snaps = new ArrayList<>();
    final List<StumpContact> stumpContacts = new ArrayList<>();
    final List<LetGo> letGo = new ArrayList<>();
    final List<Stall> stalls = new ArrayList<>();
    final List<Fault> faults = new ArrayList<>();
    final List<Mark> marks = new ArrayList<>();
    final List<Beacon> beacons = new ArrayList<>();
    double durationS;
    double shaftTurningS;
    double clutchSlippingS;
    long samplesSent;
    long framesSent;
    long framesDamaged;
    long beaconFramesRejected;
    long bytesUnheard;

    Truth(String scenario, long seed, double newtonsPerCount, int zeroCounts) {
        this.scenario = scenario;
        this.seed = seed;
        this.newtonsPerCount = newtonsPerCount;
        this.zeroCounts = zeroCounts;
    }

    public List<Haul> hauls() {
        return List.copyOf(hauls);
    }

    public List<Snap> snaps() {
        return List.copyOf(snaps);
    }

    public List<StumpContact> stumpContacts() {
        return List.copyOf(stumpContacts);
    }

    public List<LetGo> letGo() {
        return List.copyOf(letGo);
    }

    public List<Stall> stalls() {
        return List.copyOf(stalls);
    }

    public List<Fault> faults() {
        return List.copyOf(faults);
    }

    public List<Mark> marks() {
        return List.copyOf(marks);
    }

    /** Each start of the instrument, as its HELLO says it. */
    public List<Instrument> boots() {
        return List.copyOf(boots);
    }

    public double durationSeconds() {
        return durationS;
    }

    /** Time for which the shaft turned at 60 rpm or more, s. */
    public double shaftTurningSeconds() {
        return shaftTurningS;
    }

    public long samplesSent() {
        return samplesSent;
    }

    public long framesSent() {
        return framesSent;
    }

    public long framesDamaged() {
        return framesDamaged;
    }

    public String toJson() {
        return GSON.toJson(this) + "\n";
    }

    /** Nine digits: a tenth of a millisecond in a day, a thousandth of a newton. */
    private static JsonPrimitive rounded(double number) {
        BigDecimal exact = new BigDecimal(number).round(new MathContext(9));
        return new JsonPrimitive(
                exact.signum() == 0
                        ? BigDecimal.ZERO
                        : new BigDecimal(exact.stripTrailingZeros().toPlainString()));
    }

    static Map<String, Double> noLoads() {
        return new LinkedHashMap<>();
    }
}
