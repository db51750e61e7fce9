package tautlog.desk.cli;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;

/** Times and zones as they are written on a command line. */
final class LocalTime {
    private LocalTime() {}

    /** An ISO 8601 time; without a zone it is local, a day alone is its beginning. */
    static Instant instant(String option, String text, ZoneId zone) throws UsageException {
        try {
            if (text.length() <= 10) {
                return LocalDate.parse(text).atStartOfDay(zone).toInstant();
            }
            String iso = text.replace(' ', 'T');
            boolean hasZone = iso.matches(".*([Zz]|[+-][0-9:]{2,6})$")
                    && iso.indexOf('T') > 0
                    && iso.substring(iso.indexOf('T')).matches(".*[Zz+-].*");
            return hasZone
                    ? OffsetDateTime.parse(iso).toInstant()
                    : LocalDateTime.parse(iso).atZone(zone).toInstant();
        } catch (DateTimeException e) {
            throw new UsageException(option + ": \"" + text + "\" is not a time.\n  Write 2026-05-04T14:30:00 (local),"
                    + " 2026-05-04T12:30:00Z or 2026-05-04.");
        }
    }

    static ZoneId zone(String option, String text) throws UsageException {
        try {
            return ZoneId.of(text);
        } catch (DateTimeException e) {
            throw new UsageException(option + ": \"" + text + "\" is not a time zone.\n  Write a name like"
                    + " America/New_York, an offset like +02:00, or UTC.");
        }
    }
}
