package tautlog.desk.page;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoField;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.stream.Stream;
import tautlog.desk.report.Entry;
import tautlog.desk.report.Moment;
import tautlog.desk.report.Report;
import tautlog.desk.uncertainty.Bounds;
import tautlog.desk.uncertainty.Interval;
import tautlog.quantity.ForceUnit;

/**
 * How numbers and times look to a reader.
 *
 * @param unit of forces
 * @param zone of times
 * @param severalDays whether a time needs its day
 * @param severalOutings whether a time without a clock needs its outing
 */
public record Screen(ForceUnit unit, ZoneId zone, boolean severalDays, boolean severalOutings) {
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);
    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);

    /** A screen for a report: days and outings are only named where there are several. */
    public static Screen of(Report report, ForceUnit unit, ZoneId zone) {
        long days = report.recordings().stream()
                .flatMap(source -> Stream.of(source.start(), source.end()))
                .flatMap(Optional::stream)
                .map(instant -> instant.atZone(zone).toLocalDate())
                .distinct()
                .count();
        int outings =
                report.recordings().stream().mapToInt(Report.Source::outings).sum();
        return new Screen(unit, zone, days > 1, outings > 1);
    }

    /** {@code 15.7 kN}. */
    public String force(double newtons) {
        return unit.format(BigDecimal.valueOf(newtons));
    }

    /** {@code 15.7}, for a table whose head names the unit. */
    public String bareForce(double newtons) {
        return unit.number(BigDecimal.valueOf(newtons));
    }

    /** {@code 15.2–16.1}, for a table whose head names the unit; {@code ?} for an end that is not known. Ends are rounded outwards. */
    public String bareInterval(Interval interval) {
        OptionalDouble low = interval.lowNewtons();
        OptionalDouble high = interval.highNewtons();
        return (low.isPresent() ? lowEnd(low.getAsDouble()) : "?") + "–"
                + (high.isPresent() ? highEnd(high.getAsDouble()) : "?");
    }

    private String lowEnd(double newtons) {
        return unit.number(BigDecimal.valueOf(newtons), RoundingMode.FLOOR);
    }

    private String highEnd(double newtons) {
        return unit.number(BigDecimal.valueOf(newtons), RoundingMode.CEILING);
    }

    /**
     * {@code " (15.2 to 16.1)"} or {@code " (15.2 or more)"} behind a force with its unit; nothing when nothing is known, which the
     * trust section says once. Ends are rounded outwards: what is printed holds all of the interval.
     */
    public String interval(Interval interval) {
        return ends(interval.lowNewtons(), interval.highNewtons(), this::lowEnd, this::highEnd, "");
    }

    /** The same where no sentence before has said it: {@code " (15.2 to 16.1 with 95 %)"}. */
    public String intervalWithCoverage(Interval interval) {
        return ends(interval.lowNewtons(), interval.highNewtons(), this::lowEnd, this::highEnd, " with 95 %");
    }

    /** {@code " (2.7 to 2.9)"} behind a factor; ends are rounded outwards. */
    static String factor(Bounds factor) {
        return ends(
                factor.low(),
                factor.high(),
                low -> tenths(low, RoundingMode.FLOOR),
                high -> tenths(high, RoundingMode.CEILING),
                "");
    }

    private static String tenths(double value, RoundingMode rounding) {
        return BigDecimal.valueOf(value).setScale(1, rounding).toPlainString();
    }

    /** {@code 147 % (141 to 153)}, {@code 147 % (141 or more)}, {@code 147 %}; ends are rounded outwards. */
    public static String percent(double share, Bounds bounds) {
        return percent(share)
                + ends(
                        bounds.low(),
                        bounds.high(),
                        low -> barePercent(low, RoundingMode.FLOOR),
                        high -> barePercent(high, RoundingMode.CEILING),
                        "");
    }

    /** {@code 141–153 %}, for a table; {@code ?} for an end that is not known. */
    public static String barePercent(Bounds bounds) {
        OptionalDouble low = bounds.low();
        OptionalDouble high = bounds.high();
        return (low.isPresent() ? barePercent(low.getAsDouble(), RoundingMode.FLOOR) : "?") + "–"
                + (high.isPresent() ? barePercent(high.getAsDouble(), RoundingMode.CEILING) : "?") + " %";
    }

    private static String ends(
            OptionalDouble low,
            OptionalDouble high,
            DoubleFunction<String> lowEnd,
            DoubleFunction<String> highEnd,
            String coverage) {
        if (low.isEmpty()) {
            return "";
        }
        return " (" + lowEnd.apply(low.getAsDouble())
                + (high.isPresent() ? " to " + highEnd.apply(high.getAsDouble()) : " or more") + coverage + ")";
    }

    /** {@code 15.7 kN}, or {@code at least 15.7 kN} when it is a lower bound. */
    public String force(double newtons, boolean atLeast) {
        return atLeast(atLeast) + force(newtons);
    }

    /**
     * {@code 147 % (141 to 153) of limit}, or {@code at least 147 % of limit}.
     *
     * @param atLeast the tension is a lower bound
     */
    public static String share(double share, Bounds bounds, Entry.Against against, boolean atLeast) {
        return atLeast(atLeast || against.isAtMost()) + percent(share, bounds) + " of limit";
    }

    /** {@code at least } before a lower bound, else nothing. */
    public static String atLeast(boolean atLeast) {
        return atLeast ? "at least " : "";
    }

    /** {@code 147 %}; with a decimal near the limit, so that 100 never hides on which side it is. */
    public static String percent(double share) {
        return barePercent(share, share > 1 ? RoundingMode.CEILING : RoundingMode.FLOOR) + " %";
    }

    /** Rounded up: a bound that no load seen lies above. */
    public static String percentAtMost(double share) {
        return barePercent(share, RoundingMode.CEILING) + " %";
    }

    private static String barePercent(double share, RoundingMode rounding) {
        boolean near = Math.abs(share - 1) < 0.02;
        return BigDecimal.valueOf(share)
                .movePointRight(2)
                .setScale(near ? 1 : 0, rounding)
                .toPlainString();
    }

    /** Local time to the second. */
    public String time(Moment moment) {
        return moment.utc()
                .map(utc -> dayOf(utc) + CLOCK.format(utc.atZone(zone)))
                .orElseGet(() -> undated(moment, 0));
    }

    /** Local time to the tenth of a second, cut. */
    public String preciseTime(Moment moment) {
        return moment.utc()
                .map(utc -> dayOf(utc) + CLOCK.format(utc.atZone(zone)) + "."
                        + utc.truncatedTo(ChronoUnit.MILLIS).get(ChronoField.MILLI_OF_SECOND) / 100)
                .orElseGet(() -> undated(moment, 1));
    }

    private String dayOf(Instant utc) {
        return severalDays ? DAY.format(utc.atZone(zone)) + " " : "";
    }

    private String undated(Moment moment, int decimals) {
        String seconds = BigDecimal.valueOf(moment.seconds())
                .setScale(decimals, RoundingMode.FLOOR)
                .toPlainString();
        return seconds + " s" + (severalOutings ? " into outing " + moment.outing() : " after start");
    }

    /** {@code 4 May 2026}. */
    public String date(Instant utc) {
        return DATE.format(utc.atZone(zone));
    }

    /** {@code 4 May 2026 07:00:00}. */
    public String dateAndTime(Instant utc) {
        return date(utc) + " " + CLOCK.format(utc.atZone(zone));
    }

    /** A length of time: {@code 0.06 s}, {@code 12.4 s}, {@code 3:05 min}, {@code 1:02:03 h}. */
    public static String length(double seconds) {
        if (seconds < 60) {
            int decimals = seconds < 1 ? 3 : 1;
            BigDecimal rounded = BigDecimal.valueOf(seconds).setScale(decimals, RoundingMode.HALF_UP);
            return (seconds < 1 ? trimmed(rounded) : rounded.toPlainString()) + " s";
        }
        long whole = Math.round(seconds);
        return whole < 3600
                ? String.format(Locale.ROOT, "%d:%02d min", whole / 60, whole % 60)
                : String.format(Locale.ROOT, "%d:%02d:%02d h", whole / 3600, whole / 60 % 60, whole % 60);
    }

    private static String trimmed(BigDecimal value) {
        return value.signum() == 0 ? "0" : value.stripTrailingZeros().toPlainString();
    }

    /** Hours with two decimals. */
    public static String hours(double hours) {
        return String.format(Locale.ROOT, "%.2f h", hours);
    }

    /** {@code 1 pull}, {@code 3 pulls}. */
    public static String counted(long n, String one) {
        return n + " " + one + (n == 1 ? "" : "s");
    }

    /** {@code a, b and c}. */
    public static String listed(List<String> words) {
        int last = words.size() - 1;
        return last < 1
                ? String.join("", words)
                : String.join(", ", words.subList(0, last)) + " and " + words.get(last);
    }
}
