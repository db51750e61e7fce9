package tautlog.desk.service;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The forecast as a calendar, RFC 5545: one all-day event for each task on the earliest day on which it may be due, so that nobody is
 * reminded too late; what it may be the latest stands in its description. A task of which no day can be said has none.
 *
 * <p>A task keeps its UID, and each export a greater SEQUENCE: importing again moves the event.
 */
public final class Calendar {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("uuuuMMdd", Locale.ROOT);
    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);
    private static final long SECONDS_PER_MINUTE = 60;

    private final CalendarText text = new CalendarText();
    private final Instant asOf;

    private Calendar(Instant asOf) {
        this.asOf = asOf;
    }

    /** Empty when no task has a day: a calendar must hold something (RFC 5545, 3.6). */
    public static Optional<String> render(ServiceState state) {
        List<TaskForecast> dated = Forecaster.of(state).stream()
                .filter(forecast -> day(forecast).isPresent())
                .toList();
        if (dated.isEmpty()) {
            return Optional.empty();
        }
        Calendar calendar = new Calendar(state.asOf());
        calendar.text
                .line("BEGIN", "VCALENDAR")
                .line("VERSION", "2.0")
                .line("PRODID", "-//Tautlog//tautlog service forecast//EN")
                .line("METHOD", "PUBLISH");
        dated.forEach(forecast -> calendar.event(forecast, day(forecast).orElseThrow()));
        return Optional.of(calendar.text.line("END", "VCALENDAR").toString());
    }

    /** Tasks that are not in the calendar, each with the reason. */
    public static List<String> leftOut(ServiceState state) {
        return Forecaster.of(state).stream()
                .filter(forecast -> day(forecast).isEmpty())
                .map(forecast -> forecast.state().winch() + ", "
                        + forecast.state().task().id() + ": " + ForecastPage.dates(forecast)
                        + String.join(" ", forecast.basis()))
                .toList();
    }

    private static Optional<LocalDate> day(TaskForecast forecast) {
        return forecast.outlook().flatMap(Outlook::earliest);
    }

    private void event(TaskForecast forecast, LocalDate earliest) {
        String task = forecast.state().task().id();
        String winch = forecast.state().winch();
        text.line("BEGIN", "VEVENT")
                .text("UID", task + "." + winch + "@tautlog")
                .line("DTSTAMP", STAMP.format(asOf))
                .line("SEQUENCE", Long.toString(asOf.getEpochSecond() / SECONDS_PER_MINUTE))
                .line("DTSTART;VALUE=DATE", DAY.format(earliest))
                .line("DTEND;VALUE=DATE", DAY.format(earliest.plusDays(1)))
                .text("SUMMARY", forecast.state().task().title() + " (" + winch + ")")
                .text("DESCRIPTION", description(forecast))
                .line("TRANSP", "TRANSPARENT")
                .line("END", "VEVENT");
    }

    private static String description(TaskForecast forecast) {
        StringBuilder words = new StringBuilder();
        words.append(ServicePage.heading(forecast.state().standing())).append(".\n");
        words.append(ForecastPage.dates(forecast))
                .append(String.join(" ", forecast.basis()))
                .append('\n');
        forecast.state().task().how().ifPresent(how -> words.append(how).append('\n'));
        words.append("The maker's manual comes first. Stop the engine before touching the shaft.");
        return words.toString();
    }
}
