package tautlog.desk.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tautlog.desk.report.Entry;
import tautlog.desk.report.Moment;
import tautlog.desk.report.Report;

/** One sentence for the overloads of a pull under one hookup: a load that sways over the limit is told once. */
final class OverloadLines {
    private final Report report;
    private final Screen screen;
    private final EventSentences words;

    OverloadLines(Report report, Screen screen, EventSentences words) {
        this.report = report;
        this.screen = screen;
        this.words = words;
    }

    /** A sentence and when what it tells began. */
    record Line(Moment at, String text) {}

    /** What overloads have in common when they are told together; {@code pull} is -1 for none. */
    private record Group(int pull, int alone, String hookup) {}

    List<Line> lines() {
        Map<Group, List<Entry.Overload>> groups = new LinkedHashMap<>();
        int number = 0;
        for (Entry.Overload overload : report.overloads()) {
            int pull = pullOf(overload);
            Group group =
                    new Group(pull, pull < 0 ? number : 0, overload.against().hookup());
            groups.computeIfAbsent(group, of -> new ArrayList<>()).add(overload);
            number++;
        }
        return groups.values().stream().map(this::line).toList();
    }

    private int pullOf(Entry.Overload overload) {
        for (int i = 0; i < report.pulls().size(); i++) {
            Entry.Pull pull = report.pulls().get(i);
            if (pull.start().compareTo(overload.start()) <= 0
                    && overload.start().compareTo(pull.end()) <= 0) {
                return i;
            }
        }
        return -1;
    }

    private Line line(List<Entry.Overload> group) {
        Entry.Overload first = group.get(0);
        if (group.size() == 1) {
            return new Line(first.start(), words.overload(first));
        }
        Entry.Overload worst = group.stream()
                .max(Comparator.comparingDouble(Entry.Overload::share))
                .orElseThrow();
        double above = group.stream().mapToDouble(Entry.Overload::aboveSeconds).sum();
        return new Line(
                first.start(),
                screen.preciseTime(first.start()) + " to "
                        + screen.preciseTime(group.get(group.size() - 1).end()) + " Overload " + group.size()
                        + " times in one pull, above the limit for " + Screen.length(above) + " in all. The greatest: "
                        + words.overload(worst));
    }
}
