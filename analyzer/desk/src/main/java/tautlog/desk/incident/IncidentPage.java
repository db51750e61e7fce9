package tautlog.desk.incident;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import tautlog.desk.page.ActionSection;
import tautlog.desk.page.Block;
import tautlog.desk.page.Document;
import tautlog.desk.page.ReportPage;
import tautlog.desk.page.Screen;
import tautlog.desk.page.StandingText;
import tautlog.desk.report.Report;

/** Puts an {@link Incident} into words, the answers first. Start here; longer sections are classes of their own. */
public final class IncidentPage {
    private final Incident incident;
    private final Screen screen;

    private IncidentPage(Incident incident, Screen screen) {
        this.incident = incident;
        this.screen = screen;
    }

    public static Document of(Incident incident, Screen screen) {
        return new IncidentPage(incident, screen).document();
    }

    private Document document() {
        List<Document.Section> sections = new ArrayList<>();
        sections.add(inShort());
        sections.add(happened());
        incident.outing().ifPresent(outing -> {
            sections.add(new Document.Section(
                    "Gear to take out of service and inspect",
                    new ActionSection(incident.report(), screen).section().blocks()));
            sections.add(trace(outing));
            LoadSection loads = new LoadSection(outing, screen);
            sections.add(loads.section());
            sections.add(new DrivelineSection(outing).section());
            sections.add(loads.gear());
        });
        EvidenceSection evidence = new EvidenceSection(incident, screen);
        sections.add(evidence.unseen());
        sections.add(evidence.trust());
        incident.outing().ifPresent(outing -> sections.add(new SeasonSection(outing, screen).section()));
        sections.add(conditions());
        sections.add(assumptions());
        sections.add(notThis());
        return new Document(title(), subtitle(), ReportPage.banner(incident.report()), sections);
    }

    private String title() {
        return "Incident report: "
                + incident.outing().map(OutingFacts::winch).orElse("nothing recorded at that moment");
    }

    private List<String> subtitle() {
        List<String> lines = new ArrayList<>();
        lines.add(incident.window()
                        .at()
                        .map(utc ->
                                screen.dateAndTime(utc) + " " + screen.zone().getId() + " time (" + utc + ")")
                        .orElse(incident.window().when().words() + ", which has no clock")
                + ", and "
                + Screen.length(incident.window().aroundSeconds())
                + " before and after it.");
        incident.outing()
                .ifPresent(outing -> lines.add("Outing " + outing.number() + " of " + name(outing.file()) + ", "
                        + screen.time(outing.start()) + " to " + screen.time(outing.end()) + "; forces in "
                        + screen.unit().symbol() + "."));
        return lines;
    }

    private static String name(String file) {
        return String.valueOf(Path.of(file).getFileName());
    }

    private Document.Section inShort() {
        Answer answer = Answer.of(incident, screen);
        List<Block> blocks = new ArrayList<>();
        if (incident.found().state() != Incident.State.READINGS) {
            blocks.add(new Block.Notice(Block.Tone.ACTION, "Nothing at that moment", nearest()));
        }
        Block.Tone tone = incident.report().overloads().isEmpty() ? Block.Tone.CAUTION : Block.Tone.ACTION;
        blocks.add(new Block.Notice(tone, "What broke the limit", answer.whatBroke()));
        blocks.add(new Block.Notice(tone, "By how much", answer.byHowMuch()));
        blocks.add(new Block.Notice(tone, "How sure", answer.howSure()));
        blocks.add(new Block.Notice(tone, "What to do now", answer.whatNow()));
        return new Document.Section("In short", blocks);
    }

    private String nearest() {
        Incident.Found found = incident.found();
        List<String> sentences = new ArrayList<>();
        sentences.add(
                found.state() == Incident.State.GAP
                        ? "the readings of that moment are missing."
                        : "no outing was being recorded at that moment.");
        sentences.add(found.before()
                .map(near -> "The last reading before it: " + near(near) + ".")
                .orElse("There is no reading before it."));
        sentences.add(found.after()
                .map(near -> "The first after it: " + near(near) + ".")
                .orElse("There is none after it."));
        if (found.undated() > 0 && incident.window().at().isPresent()) {
            sentences.add("Of " + Screen.counted(found.undated(), "outing")
                    + " no clock was known: nobody can say whether the moment lies in them. Name one with --outing and seconds"
                    + " from its start.");
        }
        return String.join(" ", sentences);
    }

    private String near(Incident.Near near) {
        String day = near.at().utc().map(utc -> screen.date(utc) + " ").orElse("");
        return day + screen.preciseTime(near.at()) + " (outing " + near.outing() + " of " + name(near.file()) + ")";
    }

    private Document.Section happened() {
        List<String> sentences =
                Timeline.of(incident, screen).stream().map(Timeline.Event::text).toList();
        List<Block> blocks = new ArrayList<>();
        blocks.add(
                sentences.isEmpty()
                        ? new Block.Paragraph("Nothing was found in the time looked at.")
                        : new Block.Bullets(sentences));
        if (!incident.report().drops().isEmpty()) {
            blocks.add(new Block.Paragraph(
                    "A drop says that tension was lost at once: something parted, slipped, hopped free or was let off. A force"
                            + " does not tell which."));
        }
        blocks.add(new Block.Paragraph(
                "Forces in brackets: where the true value lies, with 95 %. Without brackets that is not known."));
        return new Document.Section("What happened", blocks);
    }

    private Document.Section trace(OutingFacts outing) {
        List<Block> blocks = new ArrayList<>();
        outing.traces().forEach(trace -> blocks.add(trace.figure()));
        blocks.add(
                new Block.Paragraph(
                        "Drawn: the least and the greatest reading of each column, so that no peak is lost; the limit in"
                                + " force, dashed; hatched where readings are missing; the shaft's speed below, where there is a sensor."));
        outing.traces().forEach(trace -> {
            String text = TraceWords.of(trace, screen);
            blocks.add(new Block.Paragraph(text));
        });
        return new Document.Section("The trace around it", blocks);
    }

    private Document.Section conditions() {
        List<String> lines = new ArrayList<>();
        incident.outing().ifPresent(outing -> lines.addAll(ConditionWords.of(outing)));
        incident.report()
                .marks()
                .forEach(mark -> lines.add(screen.preciseTime(mark.at()) + " Mark on the winch"
                        + (mark.note().isEmpty() ? "." : ": " + mark.note())));
        incident.notes()
                .notes()
                .forEach(note -> lines.add("Note about " + screen.dateAndTime(note.at())
                        + note.by().map(by -> " by " + by).orElse("") + ": " + note.text()));
        if (incident.notes().unplaced() > 0) {
            lines.add(Screen.counted(incident.notes().unplaced(), "note")
                    + " of the file of notes not shown: they have times, this outing has none, and nobody can say which belong"
                    + " to it.");
        }
        if (!incident.notes().isRead()) {
            lines.add("No file of notes was read.");
        }
        if (incident.notes().unreadable() > 0) {
            lines.add(Screen.counted(incident.notes().unreadable(), "line")
                    + " of the file of notes could not be read as a note.");
        }
        lines.add("Weather, ground, what hung on the line and who stood where were not recorded.");
        return new Document.Section("Conditions and notes", List.of(new Block.Bullets(lines)));
    }

    private Document.Section assumptions() {
        Set<String> lines = new LinkedHashSet<>();
        incident.outing()
                .ifPresent(outing -> outing.turns().stream()
                        .filter(Incident.Turn::assumed)
                        .forEach(turn -> lines.add("Nobody had said that hookup " + turn.hookup() + " was on, from "
                                + screen.time(turn.at()) + ".")));
        for (Report.HookupInForce hookup : incident.report().hookups()) {
            hookup.assumptions().forEach(line -> lines.add("Hookup " + hookup.id() + ", " + line));
        }
        if (lines.isEmpty()) {
            lines.add("No hookup was in force in the time looked at.");
        }
        return new Document.Section("Assumptions", List.of(new Block.Bullets(List.copyOf(lines))));
    }

    private static Document.Section notThis() {
        List<String> lines = new ArrayList<>();
        lines.add("This report tells forces, speeds and times. It finds no cause, names nobody responsible, and is no"
                + " expert's opinion.");
        lines.add("It does not say that gear is sound, nor that a pull within a limit was in order.");
        lines.addAll(StandingText.sentences());
        return new Document.Section("What this is not", List.of(new Block.Bullets(lines)));
    }
}
