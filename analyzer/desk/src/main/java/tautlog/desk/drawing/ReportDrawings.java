package tautlog.desk.drawing;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import tautlog.desk.analysis.Analysis;
import tautlog.desk.analysis.Study;
import tautlog.desk.page.Block;
import tautlog.desk.page.Drawings;
import tautlog.desk.page.Screen;
import tautlog.desk.plot.Columns;
import tautlog.desk.plot.TimeAxis;
import tautlog.desk.plot.TimePlot;
import tautlog.desk.report.Entry;
import tautlog.desk.report.Moment;
import tautlog.desk.report.Report;
import tautlog.recording.RecordingException;

/** Draws each day, and the seconds around each overload, shock, jolt and drop. */
public final class ReportDrawings {
    /** Chosen: more make a page that nobody scrolls through. */
    static final int MOST_MOMENTS = 40;

    static final int MOST_DAYS = 31;
    private static final double SECONDS_BEFORE = 2;
    private static final double SECONDS_AFTER = 3;
    /** Chosen: on a longer drawing a snap is no wider than a line. */
    private static final double MOST_SECONDS = 10;

    private final Analysis analysis;
    private final Screen screen;
    private final Map<Study, List<Target>> targets = new LinkedHashMap<>();
    private final List<Planned> days = new ArrayList<>();
    private final List<Planned> moments = new ArrayList<>();

    private ReportDrawings(Analysis analysis, Screen screen) {
        this.analysis = analysis;
        this.screen = screen;
        analysis.studies().forEach(study -> targets.put(study, new ArrayList<>()));
    }

    /** A drawing whose columns are filled later. */
    private record Planned(String title, Columns columns, TimeAxis axis) {}

    /** All drawings of a report; reads every outing once more. */
    public static Drawings of(Analysis analysis, Screen screen) throws RecordingException {
        ReportDrawings drawings = new ReportDrawings(analysis, screen);
        drawings.planDays();
        int leftOut = drawings.planMoments();
        for (Map.Entry<Study, List<Target>> study : drawings.targets.entrySet()) {
            DrawingPass.run(study.getKey(), study.getValue());
        }
        return new Drawings(drawings.figures(drawings.days, "d"), drawings.figures(drawings.moments, "m"), leftOut);
    }

    private void planDays() {
        Map<LocalDate, List<Study>> byDay = new TreeMap<>();
        for (Study study : analysis.studies()) {
            Optional<Instant> start = first(study).utc();
            if (start.isPresent()) {
                LocalDate day = start.get().atZone(screen.zone()).toLocalDate();
                byDay.computeIfAbsent(day, of -> new ArrayList<>()).add(study);
            } else {
                planUndated(study);
            }
        }
        byDay.values().stream().skip(Math.max(0, byDay.size() - MOST_DAYS)).forEach(this::planDay);
    }

    private static Moment first(Study study) {
        return study.times().ofTick(study.member().outing().firstTick());
    }

    private static Moment last(Study study) {
        return study.times().ofTick(study.member().outing().lastTick());
    }

    private void planDay(List<Study> studies) {
        Instant zero = studies.stream()
                .flatMap(study -> first(study).utc().stream())
                .min(Comparator.naturalOrder())
                .orElseThrow();
        double end = studies.stream()
                .flatMap(study -> last(study).utc().stream())
                .mapToDouble(utc -> seconds(zero, utc))
                .max()
                .orElseThrow();
        Columns columns = new Columns(0, Math.max(1, end), TimePlot.COLUMNS);
        for (Study study : studies) {
            add(
                    study,
                    new Target(
                            columns,
                            tick -> seconds(zero, study.times().utc(tick).orElse(zero))));
        }
        String title = "Tension and limit, " + screen.date(zero);
        days.add(new Planned(title, columns, new TimeAxis(Optional.of(zero), screen.zone())));
    }

    private static double seconds(Instant zero, Instant utc) {
        return (utc.getEpochSecond() - zero.getEpochSecond()) + (utc.getNano() - zero.getNano()) / 1e9;
    }

    private void planUndated(Study study) {
        Columns columns = new Columns(0, Math.max(1, last(study).seconds()), TimePlot.COLUMNS);
        add(study, new Target(columns, study.times()::seconds));
        String title = "Tension and limit, outing " + study.ordinal() + ", no clock";
        days.add(new Planned(title, columns, new TimeAxis(Optional.empty(), screen.zone())));
    }

    private void add(Study study, Target target) {
        targets.computeIfAbsent(study, of -> new ArrayList<>()).add(target);
    }

    /** A finding worth a drawing; {@code weight} decides when there are too many. */
    private record Worth(Entry entry, String what, double weight) {}

    private int planMoments() {
        Report report = analysis.report();
        List<Worth> all = Stream.of(
                        report.overloads().stream().map(e -> new Worth(e, "overload", 10 + e.share())),
                        report.shocks().stream().map(e -> new Worth(e, "shock", 5 + e.share())),
                        report.drops().stream().map(e -> new Worth(e, "drop", 4 + e.beforeNewtons() / 1e9)),
                        report.jolts().stream().map(e -> new Worth(e, "jolt", e.share())))
                .flatMap(stream -> stream)
                .toList();
        List<List<Worth>> groups = together(all.stream()
                .sorted(Comparator.comparing((Worth worth) -> worth.entry().start()))
                .toList());
        groups.stream()
                .sorted(Comparator.comparingDouble(ReportDrawings::weight).reversed())
                .limit(MOST_MOMENTS)
                .sorted(Comparator.comparing(
                        (List<Worth> group) -> group.get(0).entry().start()))
                .forEach(this::planMoment);
        return groups.stream()
                .sorted(Comparator.comparingDouble(ReportDrawings::weight).reversed())
                .skip(MOST_MOMENTS)
                .mapToInt(List::size)
                .sum();
    }

    private static double weight(List<Worth> group) {
        return group.stream().mapToDouble(Worth::weight).max().orElse(0);
    }

    /** Findings that follow each other closely share a drawing. */
    private static List<List<Worth>> together(List<Worth> sorted) {
        List<List<Worth>> groups = new ArrayList<>();
        for (Worth worth : sorted) {
            List<Worth> group = groups.isEmpty() ? List.of() : groups.get(groups.size() - 1);
            if (group.isEmpty() || !joins(group, worth.entry())) {
                group = new ArrayList<>();
                groups.add(group);
            }
            group.add(worth);
        }
        return groups;
    }

    private static boolean joins(List<Worth> group, Entry next) {
        Moment first = group.get(0).entry().start();
        return first.outing() == next.start().outing()
                && next.start().seconds() - end(group) < SECONDS_BEFORE
                && next.end().seconds() - first.seconds() < MOST_SECONDS;
    }

    private static double end(List<Worth> group) {
        return group.stream()
                .mapToDouble(worth -> worth.entry().end().seconds())
                .max()
                .orElse(0);
    }

    private void planMoment(List<Worth> group) {
        Moment start = group.get(0).entry().start();
        Study study = analysis.studies().get(start.outing() - 1);
        Columns columns = new Columns(start.seconds() - SECONDS_BEFORE, end(group) + SECONDS_AFTER, TimePlot.COLUMNS);
        add(study, new Target(columns, study.times()::seconds));
        Optional<Instant> zero = start.utc().map(utc -> utc.minusNanos(Math.round(start.seconds() * 1e9)));
        moments.add(new Planned(title(group), columns, new TimeAxis(zero, screen.zone())));
    }

    /** {@code Shock and overload, 07:00:15.0}. */
    private String title(List<Worth> group) {
        String what = Screen.listed(group.stream().map(Worth::what).distinct().toList());
        return what.substring(0, 1).toUpperCase(Locale.ROOT) + what.substring(1) + ", "
                + screen.preciseTime(group.get(0).entry().start());
    }

    private List<Block.Figure> figures(List<Planned> planned, String prefix) {
        List<Block.Figure> figures = new ArrayList<>();
        for (Planned one : planned) {
            TimePlot.Caption caption = new TimePlot.Caption(
                    prefix + figures.size(),
                    description(one),
                    one.axis(),
                    screen.unit().newtons().doubleValue(),
                    screen.unit().symbol());
            figures.add(new Block.Figure(one.title(), TimePlot.draw(one.columns(), caption)));
        }
        return figures;
    }

    private String description(Planned one) {
        double peak = one.columns().greatestTension();
        double limit = one.columns().greatestLimit();
        String shaft = one.columns().hasShaft()
                ? String.format(
                        Locale.ROOT,
                        " Shaft speed up to %.0f rpm below.",
                        one.columns().greatestShaft())
                : "";
        return one.title() + ": greatest tension " + screen.force(peak) + ", limit " + screen.force(limit)
                + (one.columns().hasGap() ? ", hatched where readings are missing." : ".") + shaft;
    }
}
