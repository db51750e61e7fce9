package tautlog.desk.season;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.Optional;

/**
 * A day of one winch: the outings that began on it.
 *
 * @param date empty for the outings without a clock
 */
public record DayKey(String winch, Optional<LocalDate> date) implements Comparable<DayKey> {
    private static final Comparator<DayKey> ORDER = Comparator.comparing(
                    (DayKey key) -> key.date().orElse(LocalDate.MAX))
            .thenComparing(DayKey::winch);

    /** A name for addresses: nothing of it comes from a file's name. */
    public String id() {
        return KnownSeason.winchId(winch) + "." + date.map(LocalDate::toString).orElse("undated");
    }

    @Override
    public int compareTo(DayKey other) {
        return ORDER.compare(this, other);
    }
}
