package tautlog.desk.hours;

import java.time.Instant;
import java.time.LocalDate;
import java.time.MonthDay;
import java.time.YearMonth;
import java.time.ZoneId;

/** A stretch of the calendar that outings are added up over, each with the local day on which it began. */
public enum Period {
    DAY {
        @Override
        String of(LocalDate day, MonthDay seasonFrom) {
            return day.toString();
        }
    },
    MONTH {
        @Override
        String of(LocalDate day, MonthDay seasonFrom) {
            return YearMonth.from(day).toString();
        }
    },
    SEASON {
        @Override
        String of(LocalDate day, MonthDay seasonFrom) {
            LocalDate from = seasonFrom.atYear(day.getYear());
            int year = day.isBefore(from) ? day.getYear() - 1 : day.getYear();
            return seasonFrom.equals(MonthDay.of(1, 1)) ? String.valueOf(year) : year + "/" + (year + 1);
        }
    };

    /** {@code 2026-05-04}, {@code 2026-05}, {@code 2026} or, of a season across the turn of the year, {@code 2025/2026}. */
    abstract String of(LocalDate day, MonthDay seasonFrom);

    String of(Instant start, ZoneId zone, MonthDay seasonFrom) {
        return of(start.atZone(zone).toLocalDate(), seasonFrom);
    }
}
