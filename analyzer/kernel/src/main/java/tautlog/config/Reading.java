package tautlog.config;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.tomlj.TomlArray;
import org.tomlj.TomlTable;
import tautlog.quantity.Force;
import tautlog.quantity.Length;
import tautlog.quantity.QuantityException;
import tautlog.quantity.TimeSpan;
import tautlog.quantity.Torque;

/**
 * How the value of a key is read: turns what TOML gives into a typed value, or says why not.
 *
 * @param <T> the typed value
 */
public final class Reading<T> {
    /** Takes what TOML gives: a text, whole number, decimal, truth value, date, list or table. */
    @FunctionalInterface
    public interface Reader<T> {
        T read(Object written) throws Refusal;
    }

    private final String allowed;
    private final Reader<T> reader;

    /**
     * @param allowed what a message says when the key is missing, as a clause: {@code a force ("12.5 kN")}
     */
    public Reading(String allowed, Reader<T> reader) {
        this.allowed = allowed;
        this.reader = reader;
    }

    public String allowed() {
        return allowed;
    }

    /** @throws Refusal if {@code written} cannot be taken */
    public T read(Object written) throws Refusal {
        return reader.read(written);
    }

    public static Reading<String> text() {
        return new Reading<>("a text in quotes", written -> asText(written, "Write a text in quotes."));
    }

    /** A text of letters, digits, points, hyphens and underscores, fit for a file's name and for a dotted path. */
    public static Reading<String> name() {
        String next =
                "Write 1 to 64 letters (a-z, A-Z), digits, points, hyphens or underscores, a letter or digit first.";
        Pattern pattern = Pattern.compile("[A-Za-z0-9][A-Za-z0-9._-]{0,63}");
        return new Reading<>("a name (\"choker-1\")", written -> {
            String text = asText(written, next);
            if (!pattern.matcher(text).matches()) {
                throw new Refusal(show(written) + " is not a name", next);
            }
            return text;
        });
    }

    public static Reading<Integer> whole(int least, int greatest) {
        String allowed = least == greatest ? "only " + least : "a whole number from " + least + " to " + greatest;
        return new Reading<>(allowed, written -> {
            if (written instanceof Long number && number >= least && number <= greatest) {
                return Math.toIntExact(number);
            }
            throw new Refusal(
                    show(written) + " is not " + allowed, "Write the number without quotes and without a point.");
        });
    }

    /** A plain number without a unit, exact: see {@link #exact}. */
    public static Reading<BigDecimal> decimal(Range range) {
        String allowed = "a number " + range;
        return new Reading<>(allowed, written -> {
            BigDecimal number = asNumber(written, allowed);
            if (!range.contains(number)) {
                throw new Refusal(show(written) + " is out of range", "Allowed: " + range + ".");
            }
            return number;
        });
    }

    public static Reading<Boolean> flag() {
        return new Reading<>("true or false", written -> {
            if (written instanceof Boolean flag) {
                return flag;
            }
            throw new Refusal(show(written) + " is not true or false", "Write true or false without quotes.");
        });
    }

    public static Reading<LocalDate> date() {
        return new Reading<>("a date (2026-05-04)", written -> {
            if (written instanceof LocalDate date) {
                return date;
            }
            throw new Refusal(show(written) + " is not a date", "Write year-month-day without quotes: 2026-05-04.");
        });
    }

    /** An instant with its offset from UTC: {@code 2026-05-04T07:00:00Z}. */
    public static Reading<OffsetDateTime> instant() {
        return new Reading<>("a time with its zone (2026-05-04T07:00:00Z)", written -> {
            if (written instanceof OffsetDateTime instant) {
                return instant;
            }
            throw new Refusal(
                    show(written) + " is not a time with its zone", "Write it without quotes: 2026-05-04T07:00:00Z.");
        });
    }

    public static Reading<Force> force() {
        return quantity("a force (\"12.5 kN\")", Force::parse);
    }

    public static Reading<Length> length() {
        return quantity("a length (\"11 mm\")", Length::parse);
    }

    public static Reading<Torque> torque() {
        return quantity("a torque (\"1120 N m\")", Torque::parse);
    }

    /** A time of at most {@code greatestSeconds}. */
    public static Reading<TimeSpan> time(String greatestSeconds) {
        String allowed = "a time above 0 to " + greatestSeconds + " s (\"0.3 s\")";
        Reading<TimeSpan> any = quantity(allowed, TimeSpan::parse);
        return new Reading<>(allowed, written -> {
            TimeSpan time = any.read(written);
            if (time.seconds().compareTo(new BigDecimal(greatestSeconds)) > 0) {
                throw new Refusal(show(written) + " is too long", "Allowed: above 0 to " + greatestSeconds + " s.");
            }
            return time;
        });
    }

    /** One of some words, each standing for a value; a wrong one is answered with the nearest. */
    public static <T> Reading<T> oneOf(Map<String, T> words) {
        List<String> sorted = words.keySet().stream().sorted().toList();
        String allowed = sorted.stream().map(word -> '"' + word + '"').collect(Collectors.joining(", "));
        return new Reading<>("one of " + allowed, written -> {
            T value = written instanceof String word ? words.get(word) : null;
            if (value != null) {
                return value;
            }
            String nearest = written instanceof String word
                    ? NearestKey.to(word.toLowerCase(Locale.ROOT), sorted)
                            .map(meant -> "Did you mean \"" + meant + "\"? ")
                            .orElse("")
                    : "";
            throw new Refusal(show(written) + " is not known here", nearest + "Allowed: " + allowed + ".");
        });
    }

    /** The constants of an enum, written in small letters with hyphens: {@code DEAD_END} is {@code "dead-end"}. */
    public static <E extends Enum<E>> Reading<E> oneOf(Class<E> type) {
        return oneOf(Arrays.stream(type.getEnumConstants()).collect(Collectors.toMap(Reading::word, value -> value)));
    }

    /** How a constant is written in files and on screens: {@code DEAD_END} is {@code dead-end}. */
    public static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /**
     * The decimal that somebody wrote and TOML turned into a double: the shortest one that gives this double. Up to 15
     * digits that is the written one, so that 0.95 is exactly 0.95.
     *
     * @param number finite
     */
    public static BigDecimal exact(double number) {
        BigDecimal binary = new BigDecimal(number);
        for (int digits = 1; digits < 17; digits++) {
            BigDecimal shorter = binary.round(new MathContext(digits, RoundingMode.HALF_EVEN));
            if (shorter.doubleValue() == number) {
                return shorter.signum() == 0 ? BigDecimal.ZERO : shorter;
            }
        }
        return binary.round(new MathContext(17, RoundingMode.HALF_EVEN));
    }

    private static <Q> Reading<Q> quantity(String allowed, Function<String, Q> parse) {
        return new Reading<>(allowed, written -> {
            if (written instanceof Number) {
                throw new Refusal(show(written) + " has no unit", "Write " + allowed + ", in quotes.");
            }
            String text = asText(written, "Write " + allowed + ", in quotes.");
            try {
                return parse.apply(text);
            } catch (QuantityException wrong) {
                throw new Refusal(wrong.found(), wrong.allowed());
            }
        });
    }

    private static String asText(Object written, String next) throws Refusal {
        if (written instanceof String text) {
            return text;
        }
        throw new Refusal(show(written) + " is not a text", next);
    }

    private static BigDecimal asNumber(Object written, String allowed) throws Refusal {
        if (written instanceof Long whole) {
            return BigDecimal.valueOf(whole);
        }
        if (written instanceof Double number && Double.isFinite(number)) {
            return exact(number);
        }
        throw new Refusal(show(written) + " is not " + allowed, "Write a plain number without quotes.");
    }

    /** What was written, for a message. */
    public static String show(Object written) {
        if (written instanceof TomlTable) {
            return "a table { … }";
        }
        if (written instanceof TomlArray) {
            return "a list [ … ]";
        }
        String line = String.valueOf(written).replaceAll("\\p{Cntrl}", "?");
        String cut = line.length() > 60 ? line.substring(0, 60) + "…" : line;
        return written instanceof String ? '"' + cut + '"' : cut;
    }
}
