package tautlog.service;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.Optional;

/** A time as a line of the ledger has it: with its zone, local, or a day alone. */
enum WrittenTime {
    /** A day alone is its beginning. */
    FROM,
    /** A day alone is its end. */
    TO;

    static final String ALLOWED = "Write \"2026-05-04T12:30:00Z\", \"2026-05-04T14:30:00\" (local) or \"2026-05-04\".";

    /** Empty when {@code text} is no time. */
    Optional<Instant> parse(String text, ZoneId zone) {
        try {
            if (text.length() <= 10) {
                LocalDate day = LocalDate.parse(text);
                return Optional.of(
                        (this == TO ? day.plusDays(1) : day).atStartOfDay(zone).toInstant());
            }
            String iso = text.replace(' ', 'T');
            return Optional.of(
                    hasZone(iso)
                            ? OffsetDateTime.parse(iso).toInstant()
                            : LocalDateTime.parse(iso).atZone(zone).toInstant());
        } catch (DateTimeException noTime) {
            return Optional.empty();
        }
    }

    private static boolean hasZone(String iso) {
        return iso.substring(10).matches(".*([Zz]|[+-]\\d\\d(:?\\d\\d){0,2})");
    }
}
