package tautlog.desk.importing;

import java.math.RoundingMode;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.temporal.ChronoField;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import java.util.Optional;

/** The ways in which a time may be written in a column; all times of a column are written in one way. */
enum TimeForm {
    /** A plain number: seconds since some moment that the column does not tell. */
    SECONDS {
        @Override
        long micros(String text, ZoneId zone) {
            return ReadingsCollector.number(text)
                    .orElseThrow(() -> new NumberFormatException(text))
                    .movePointRight(6)
                    .setScale(0, RoundingMode.HALF_UP)
                    .longValueExact();
        }
    },
    /** ISO 8601 with its offset from UTC, {@code 2026-05-04T07:00:00.125Z}. */
    INSTANT {
        @Override
        long micros(String text, ZoneId zone) {
            return sinceEpoch(OffsetDateTime.parse(text.replace(' ', 'T')).toInstant());
        }
    },
    /** ISO 8601 without an offset, local. */
    LOCAL {
        @Override
        long micros(String text, ZoneId zone) {
            return sinceEpoch(
                    LocalDateTime.parse(text.replace(' ', 'T')).atZone(zone).toInstant());
        }
    },
    /** {@code 2026-05-04-07:00:00.125}, local. */
    HYPHENS {
        @Override
        long micros(String text, ZoneId zone) {
            return sinceEpoch(LocalDateTime.parse(text, HYPHENATED).atZone(zone).toInstant());
        }
    };

    private static final DateTimeFormatter HYPHENATED = new DateTimeFormatterBuilder()
            .appendPattern("uuuu-MM-dd-HH:mm:ss")
            .appendFraction(ChronoField.NANO_OF_SECOND, 0, 9, true)
            .toFormatter(Locale.ROOT);

    /**
     * Microseconds since 1970, or since an unknown moment for {@link #SECONDS}.
     *
     * @throws DateTimeException or ArithmeticException if {@code text} is not written in this way
     */
    abstract long micros(String text, ZoneId zone);

    boolean tellsTheDate() {
        return this != SECONDS;
    }

    /** As {@link #micros}; empty when {@code text} is written in another way. */
    Optional<Long> read(String text, ZoneId zone) {
        try {
            return Optional.of(micros(text, zone));
        } catch (DateTimeException | ArithmeticException | NumberFormatException e) {
            return Optional.empty(); // the caller names the line and what was found
        }
    }

    /** The way in which {@code text} is written. */
    static Optional<TimeForm> of(String text, ZoneId zone) {
        for (TimeForm form : values()) {
            if (form.read(text, zone).isPresent()) {
                return Optional.of(form);
            }
        }
        return Optional.empty();
    }

    private static long sinceEpoch(Instant instant) {
        return ChronoUnit.MICROS.between(Instant.EPOCH, instant);
    }
}
