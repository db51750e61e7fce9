package tautlog.logger.gps;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Fields of RMC and GGA as values; what is out of its range is a {@link BadField}. */
final class NmeaFields {
    private static final Pattern ANGLE = Pattern.compile("(\\d{2,3})(\\d{2}(?:\\.\\d{0,9})?)");
    private static final Pattern TIME = Pattern.compile("(\\d{2})(\\d{2})(\\d{2})(?:\\.(\\d{0,6}))?");
    private static final Pattern DATE = Pattern.compile("(\\d{2})(\\d{2})(\\d{2})");
    private static final BigDecimal SIXTY = BigDecimal.valueOf(60);
    /** The satellites have told time since 1980: a year of two digits below 80 is of this century. */
    private static final int FIRST_YEAR = 80;

    private NmeaFields() {}

    /** A field is missing or out of its range. */
    static final class BadField extends Exception {
        private static final long serialVersionUID = 1L;

        BadField(String field) {
            super(field, null, false, false);
        }
    }

    /** Ten-millionths of a degree, north above 0. */
    static int latitudeE7(String angle, String side) throws BadField {
        return degreesE7(angle, side, "N", "S", 2, 90);
    }

    /** Ten-millionths of a degree, east above 0. */
    static int longitudeE7(String angle, String side) throws BadField {
        return degreesE7(angle, side, "E", "W", 3, 180);
    }

    private static int degreesE7(String angle, String side, String plus, String minus, int digits, int most)
            throws BadField {
        Matcher parts = ANGLE.matcher(angle);
        boolean isSide = side.equals(plus) || side.equals(minus);
        if (!isSide || !parts.matches() || parts.group(1).length() != digits) {
            throw new BadField(angle);
        }
        BigDecimal minutes = new BigDecimal(parts.group(2));
        BigDecimal degrees = new BigDecimal(parts.group(1)).add(minutes.divide(SIXTY, 12, RoundingMode.HALF_UP));
        if (minutes.compareTo(SIXTY) >= 0 || degrees.compareTo(BigDecimal.valueOf(most)) > 0) {
            throw new BadField(angle);
        }
        int e7 = degrees.movePointRight(7).setScale(0, RoundingMode.HALF_UP).intValueExact();
        return side.equals(plus) ? e7 : -e7;
    }

    /**
     * Microseconds since 1970; empty when time or date is not told, and within a leap second, which no count of seconds has.
     *
     * @throws BadField if there is no such time or day
     */
    static Optional<Long> utcMicros(String time, String date) throws BadField {
        if (time.isEmpty()) {
            return Optional.empty();
        }
        Matcher clock = TIME.matcher(time);
        if (!clock.matches()) {
            throw new BadField(time);
        }
        boolean isLeap = clock.group(3).equals("60");
        if (isLeap && !(clock.group(1) + clock.group(2)).equals("2359")) {
            throw new BadField(time);
        }
        try {
            LocalTime of = LocalTime.of(number(clock, 1), number(clock, 2), isLeap ? 59 : number(clock, 3));
            if (date.isEmpty()) {
                return Optional.empty();
            }
            long seconds = date(date).toEpochSecond(of, ZoneOffset.UTC);
            return isLeap ? Optional.empty() : Optional.of(seconds * 1_000_000 + micros(clock));
        } catch (DateTimeException none) {
            throw new BadField(time);
        }
    }

    private static LocalDate date(String date) throws BadField {
        Matcher parts = DATE.matcher(date);
        if (!parts.matches()) {
            throw new BadField(date);
        }
        int year = number(parts, 3);
        return LocalDate.of(year + (year < FIRST_YEAR ? 2000 : 1900), number(parts, 2), number(parts, 1));
    }

    private static int number(Matcher parts, int group) {
        return Integer.parseInt(parts.group(group));
    }

    private static long micros(Matcher clock) {
        String fraction = Optional.ofNullable(clock.group(4)).orElse("");
        return Long.parseLong((fraction + "000000").substring(0, 6));
    }

    /** A whole number of up to four digits; 0 when the field is empty. */
    static int whole(String field) throws BadField {
        if (!field.matches("\\d{0,4}")) {
            throw new BadField(field);
        }
        return field.isEmpty() ? 0 : Integer.parseInt(field);
    }

    /** Tenths of a number below 10,000; 0 when the field is empty. */
    static int tenths(String field) throws BadField {
        if (field.isEmpty()) {
            return 0;
        }
        if (!field.matches("\\d{1,4}(\\.\\d{0,6})?")) {
            throw new BadField(field);
        }
        return new BigDecimal(field)
                .movePointRight(1)
                .setScale(0, RoundingMode.HALF_UP)
                .intValueExact();
    }
}
