package tautlog.desk.incident;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import tautlog.desk.page.EventSentences;
import tautlog.desk.page.Screen;
import tautlog.desk.page.TroubleWords;
import tautlog.desk.report.Entry;
import tautlog.desk.report.Moment;
import tautlog.desk.report.Report;

/** What happened in the window, one sentence each, in the order of time; facts, no causes. */
final class Timeline {
    private final Incident incident;
    private final Screen screen;
    private final EventSentences words;
    private final List<Event> events = new ArrayList<>();

    private Timeline(Incident incident, Screen screen) {
        this.incident = incident;
        this.screen = screen;
        words = new EventSentences(screen);
    }

    /**
     * Something that happened.
     *
     * @param kind in one word or two joined by a hyphen
     * @param text a sentence that begins with the time
     */
    record Event(Moment at, String kind, String text) {}

    static List<Event> of(Incident incident, Screen screen) {
        Timeline timeline = new Timeline(incident, screen);
        timeline.findings(incident.report());
        incident.outing().ifPresent(timeline::outing);
        timeline.events.sort(Comparator.comparing(Event::at));
        return timeline.events;
    }

    private void findings(Report report) {
        report.pulls().forEach(this::pull);
        report.overloads().forEach(this::overload);
        report.shocks().forEach(shock -> events.add(new Event(shock.at(), "shock", words.shock(shock))));
        report.jolts().forEach(jolt -> events.add(new Event(jolt.at(), "jolt", words.jolt(jolt))));
        report.drops().forEach(drop -> events.add(new Event(drop.start(), "drop", words.drop(drop))));
        report.stalls().forEach(stall -> events.add(new Event(stall.start(), "stall", words.stall(stall))));
        report.trouble()
                .forEach(trouble -> add(
                        trouble.start(),
                        "trouble",
                        "Sensor: " + TroubleWords.of(trouble.trouble()) + ". What the figures say then is in doubt."));
        report.marks()
                .forEach(mark -> add(mark.at(), "mark", "Mark" + (mark.note().isEmpty() ? "." : ": " + mark.note())));
    }

    private void pull(Entry.Pull pull) {
        add(
                pull.start(),
                "pull-began",
                "A pull began, against hookup " + pull.against().hookup()
                        + (pull.against().assumed() ? " (assumed, nobody had said so)" : "") + ".");
        add(
                pull.end(),
                "pull-ended",
                (pull.cutByGap()
                                ? "The pull is cut off here by missing readings: what came after is not known"
                                : pull.cutByEnd() ? "The pull is cut off here by the outing's end" : "The pull ended")
                        + ", after " + Screen.length(pull.durationSeconds()) + "; its greatest was "
                        + screen.force(pull.peakNewtons(), pull.atLeast()) + screen.interval(pull.peakInterval()) + ", "
                        + Screen.share(pull.share(), pull.shareBounds(), pull.against(), pull.atLeast()) + ".");
    }

    private void overload(Entry.Overload overload) {
        events.add(new Event(overload.start(), "overload", words.overload(overload)));
        add(overload.end(), "overload-ended", "Last reading over the limit.");
    }

    private void outing(OutingFacts outing) {
        if (incident.window().holds(outing.start())) {
            add(outing.start(), "outing-began", "The outing began: nothing before is known.");
        }
        if (incident.window().holds(outing.end())) {
            add(
                    outing.end(),
                    "outing-ended",
                    outing.isEnded()
                            ? "The outing ended: nothing after is known."
                            : "The outing ended with the power, or still goes on: up to 1 s may be missing, and nothing after is known.");
        }
        outing.turns().stream()
                .filter(turn -> incident.window().holds(turn.at()))
                .forEach(turn -> add(
                        turn.at(),
                        "hookup",
                        "Hookup " + turn.hookup()
                                + (turn.assumed() ? " is taken to be on, nobody said so." : " is on.")));
        outing.readings().gaps().forEach(gap -> gap(outing, gap));
        greatest(outing);
    }

    private void gap(OutingFacts outing, Readings.Gap gap) {
        add(
                at(outing, gap.fromSeconds()),
                gap.kind() == Readings.Kind.MISSING ? "gap" : "open-bridge",
                (gap.kind() == Readings.Kind.MISSING ? "Readings are missing" : "The bridge was open")
                        + " for " + Screen.length(gap.toSeconds() - gap.fromSeconds())
                        + ": what the line did meanwhile is not known.");
    }

    private void greatest(OutingFacts outing) {
        Readings.AtGreatest greatest = outing.readings().subject();
        if (greatest.seconds().isPresent() && outing.subject().isPresent()) {
            Subject subject = outing.subject().get();
            add(
                    at(outing, greatest.seconds().getAsDouble()),
                    "greatest",
                    "The greatest pull: " + screen.force(subject.peakNewtons(), subject.atLeast())
                            + screen.interval(subject.peakInterval()) + ".");
        }
    }

    /** A moment of the outing, by the distance from the one asked for. */
    private static Moment at(OutingFacts outing, double seconds) {
        double away = seconds - outing.at().seconds();
        return new Moment(
                outing.at().utc().map(utc -> utc.plusNanos(Math.round(away * 1e9))),
                outing.at().outing(),
                seconds);
    }

    private void add(Moment at, String kind, String text) {
        events.add(new Event(at, kind, screen.preciseTime(at) + " " + text));
    }
}
