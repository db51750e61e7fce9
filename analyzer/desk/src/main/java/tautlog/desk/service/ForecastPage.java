package tautlog.desk.service;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import tautlog.desk.page.Block;
import tautlog.desk.page.Document;
import tautlog.desk.page.StandingText;
import tautlog.service.Standing;

/** When tasks will be due, in words. */
public final class ForecastPage {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEE d MMM uuuu", Locale.ENGLISH);

    private final ServiceState state;

    private ForecastPage(ServiceState state) {
        this.state = state;
    }

    public static Document of(ServiceState state) {
        return new ForecastPage(state).document();
    }

    private Document document() {
        List<Block> blocks = new ArrayList<>();
        for (TaskForecast forecast : Forecaster.of(state)) {
            blocks.add(block(forecast));
        }
        List<String> know = new ArrayList<>();
        know.add("The maker's manual of winch, shaft, rope and gear comes before any interval here.");
        know.add(
                "Due dates follow from how much was worked in the last weeks; another pace means other dates. Only tautlog"
                        + " service list says what is due.");
        know.addAll(state.notesBesideDoubts());
        List<Document.Section> sections = new ArrayList<>();
        state.doubts().section(state.leftOut()).ifPresent(sections::add);
        sections.add(new Document.Section("Tasks", blocks));
        sections.add(new Document.Section("Read this with the dates", List.of(new Block.Bullets(know))));
        sections.add(new Document.Section(StandingText.HEADING, List.of(new Block.Bullets(StandingText.sentences()))));
        return new Document(
                "When service will be due",
                List.of("As of " + new TaskWords(state.zone()).time(state.asOf()) + "."),
                "",
                sections);
    }

    private Block block(TaskForecast forecast) {
        Standing standing = forecast.state().standing();
        boolean isAction = standing == Standing.OVERDUE || standing == Standing.DUE;
        String label = (state.machines().size() > 1 ? forecast.state().winch() + ", " : "")
                + forecast.state().task().id();
        return new Block.Notice(
                isAction ? Block.Tone.ACTION : Block.Tone.CAUTION,
                label,
                dates(forecast) + String.join(" ", forecast.basis()));
    }

    /** {@code Mon 4 May 2026 to Thu 21 May 2026, expected Tue 12 May 2026.}, or nothing when it cannot be said. */
    static String dates(TaskForecast forecast) {
        Standing standing = forecast.state().standing();
        if (forecast.outlook().isEmpty() || standing == Standing.OVERDUE || standing == Standing.DUE) {
            return "";
        }
        Outlook outlook = forecast.outlook().get();
        if (outlook.earliest().isEmpty()) {
            return "Not within two years at this pace. ";
        }
        String from = day(outlook.earliest().get());
        if (outlook.latest().equals(outlook.earliest())) {
            return from + ". ";
        }
        Optional<LocalDate> latest = outlook.latest();
        String to =
                latest.isPresent() ? from + " to " + day(latest.get()) : "from " + from + ", no latest day can be said";
        return to + outlook.expected().map(day -> ", expected " + day(day)).orElse("") + ". ";
    }

    private static String day(LocalDate day) {
        return DAY.format(day);
    }
}
