package tautlog.desk.incident;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tautlog.calibration.CellCalibration;
import tautlog.desk.analysis.Analysis;
import tautlog.desk.analysis.HookupTrack;
import tautlog.desk.analysis.Study;
import tautlog.desk.drawing.SpanDrawings;
import tautlog.desk.page.Screen;
import tautlog.desk.report.ItemLoad;
import tautlog.desk.report.Moment;
import tautlog.desk.report.Report;
import tautlog.recording.Outing;
import tautlog.recording.RecordingException;
import tautlog.recording.Verification;

/** Puts together what an analysis tells of one moment; what a report works out is taken from it, never worked out again. */
public final class IncidentStudy {
    /** Chosen: a snap and what came of it. */
    private static final double CLOSE_SECONDS = 2;

    private final Analysis analysis;
    private final Window window;
    private final Beside beside;
    private final Screen screen;
    private final Scene scene;

    private IncidentStudy(Analysis analysis, Window window, Beside beside, Screen screen) {
        this.analysis = analysis;
        this.window = window;
        this.beside = beside;
        this.screen = screen;
        scene = Scene.of(analysis.studies(), window);
    }

    /**
     * What is kept beside the recordings.
     *
     * @param calibration another one than those of the day, with which all was read; empty when each was read with its own
     */
    public record Beside(
            SavedNotes notes,
            Optional<LedgerOf> ledger,
            List<Incident.KeptLink> links,
            Optional<CellCalibration> calibration) {
        public Beside {
            links = List.copyOf(links);
        }
    }

    /** The ledger of a winch. */
    public interface LedgerOf {
        InspectionLedger of(String winch);
    }

    /** @throws RecordingException if the outing cannot be read a second time */
    public static Incident of(Analysis analysis, Window window, Beside beside, Screen screen)
            throws RecordingException {
        return new IncidentStudy(analysis, window, beside, screen).incident();
    }

    private Incident incident() throws RecordingException {
        List<Incident.Turn> turns =
                scene.study().isPresent() ? turns(scene.study().get()) : List.of();
        Set<String> inForce = turns.stream().map(Incident.Turn::hookup).collect(Collectors.toSet());
        Report report = WindowReport.of(analysis.report(), window, inForce);
        Optional<OutingFacts> outing =
                scene.study().isPresent() ? Optional.of(outing(scene.study().get(), report, turns)) : Optional.empty();
        return new Incident(window, found(outing), report, beside.notes().in(window), outing);
    }

    private Incident.Found found(Optional<OutingFacts> outing) {
        if (outing.isEmpty() || !scene.isUnderWay()) {
            return new Incident.Found(
                    Incident.State.NO_OUTING,
                    scene.before().map(study -> near(study, Scene.last(study))),
                    scene.after().map(study -> near(study, Scene.first(study))),
                    scene.undated());
        }
        Study study = scene.study().orElseThrow();
        Readings readings = outing.get().readings();
        boolean gap = outing.get().isThinned() || readings.isGapAt(scene.seconds());
        return new Incident.Found(
                gap ? Incident.State.GAP : Incident.State.READINGS,
                near(study, readings.before()),
                near(study, readings.after()),
                scene.undated());
    }

    private static Incident.Near near(Study study, Moment at) {
        return new Incident.Near(
                at, study.member().file().toString(), study.member().outing().index() + 1);
    }

    private static Optional<Incident.Near> near(Study study, java.util.OptionalDouble seconds) {
        return seconds.isPresent() ? Optional.of(near(study, moment(study, seconds.getAsDouble()))) : Optional.empty();
    }

    /** So many seconds after an outing's first sample. */
    public static Moment moment(Study study, double seconds) {
        Outing outing = study.member().outing();
        return study.times()
                .ofTick(outing.firstTick()
                        + Math.round(seconds * outing.start().instrument().tickHz()));
    }

    private OutingFacts outing(Study study, Report report, List<Incident.Turn> turns) throws RecordingException {
        Outing outing = study.member().outing();
        Optional<Subject> subject =
                Subject.of(report, analysis.studies().stream().map(Study::rig).toList());
        Readings readings = readings(study, subject);
        InspectionLedger ledger =
                beside.ledger().map(of -> of.of(study.member().winch())).orElse(InspectionLedger.NONE);
        return new OutingFacts(
                study.member().file().toString(),
                outing.index() + 1,
                study.member().winch(),
                moment(study, scene.seconds()),
                Scene.first(study),
                Scene.last(study),
                outing.ended(),
                outing.thinned(),
                outing.start().instrument().rate().hertz(),
                outing.start().program(),
                readings,
                turns,
                subject,
                study.rig().driveline().isPresent(),
                DrivelineLoad.of(study.rig().driveline(), subject, readings),
                GearFacts.of(subject.map(Subject::items).orElseGet(() -> items(study, turns)), study.rig(), ledger),
                beside.ledger().isPresent(),
                ledger.unusable(),
                CalibrationFacts.of(outing, beside.calibration()),
                ClockTrust.of(outing, scene.seconds()),
                integrity(analysis.verification(study)),
                subject.map(of -> SeasonEvent.like(of, analysis.report(), report))
                        .orElse(List.of()),
                SpanDrawings.of(study, spans(study), screen, scene.seconds()));
    }

    /** Of the hookups that were on, when nothing was pulled: no load is known, but what was in the line is. */
    private static List<ItemLoad> items(Study study, List<Incident.Turn> turns) {
        return turns.stream()
                .flatMap(turn -> study.rig().hookup(turn.hookup()).stream())
                .flatMap(hookup -> hookup.items().stream())
                .map(item -> ItemLoad.of(
                        item,
                        study.rig(),
                        java.math.BigDecimal.ZERO,
                        tautlog.desk.uncertainty.Interval.unknown("nothing was pulled")))
                .toList();
    }

    private Readings readings(Study study, Optional<Subject> subject) throws RecordingException {
        Witness.Span around =
                new Witness.Span(scene.seconds() - window.aroundSeconds(), scene.seconds() + window.aroundSeconds());
        Witness.Span of = subject.filter(one -> one.start().outing() == study.ordinal())
                .map(one -> new Witness.Span(
                        one.start().seconds() - halfSample(study), one.end().seconds() + halfSample(study)))
                .orElse(Witness.Span.NOTHING);
        return Witness.of(study, around, scene.seconds(), of);
    }

    /** A finding's times are those of samples, to a rounding. */
    private static double halfSample(Study study) {
        return 0.5 / study.member().outing().start().instrument().rate().hertz();
    }

    private List<Incident.Turn> turns(Study study) throws RecordingException {
        List<HookupTrack.Turn> all = study.hookups().turns();
        List<Incident.Turn> turns = new ArrayList<>();
        double from = scene.seconds() - window.aroundSeconds();
        double to = scene.seconds() + window.aroundSeconds();
        for (int i = 0; i < all.size(); i++) {
            Moment at = start(study, all.get(i).fromNumber());
            boolean endsBefore = i + 1 < all.size()
                    && start(study, all.get(i + 1).fromNumber()).seconds() <= from;
            if (!endsBefore && at.seconds() <= to) {
                turns.add(new Incident.Turn(
                        at, all.get(i).hookup().id(), all.get(i).assumed()));
            }
        }
        return turns;
    }

    private static Moment start(Study study, long number) throws RecordingException {
        Outing outing = study.member().outing();
        return study.times().ofNumber(Math.max(outing.firstNumber(), Math.min(outing.lastNumber(), number)));
    }

    private List<SpanDrawings.Span> spans(Study study) {
        double at = scene.seconds();
        double around = window.aroundSeconds();
        double length = Math.max(1, Scene.last(study).seconds());
        List<SpanDrawings.Span> spans = new ArrayList<>();
        if (around > CLOSE_SECONDS) {
            spans.add(new SpanDrawings.Span("Two seconds before and after", at - CLOSE_SECONDS, at + CLOSE_SECONDS));
        }
        spans.add(new SpanDrawings.Span(Screen.length(around) + " before and after", at - around, at + around));
        spans.add(new SpanDrawings.Span("The whole outing", 0, length));
        return spans;
    }

    private Incident.Integrity integrity(Verification found) {
        return new Incident.Integrity(
                found.isIntact(),
                found.damages().size(),
                found.lost().size(),
                found.gaps().size(),
                found.lastLink(),
                beside.links());
    }
}
