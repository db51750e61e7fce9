package tautlog.desk.drawing;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import tautlog.desk.analysis.Study;
import tautlog.desk.page.Block;
import tautlog.desk.page.Screen;
import tautlog.desk.plot.Columns;
import tautlog.desk.plot.TimeAxis;
import tautlog.desk.plot.TimePlot;
import tautlog.recording.RecordingException;

/** Draws spans of one outing round one of its moments. */
public final class SpanDrawings {
    private final Study study;
    private final Screen screen;
    private final double momentSeconds;

    private SpanDrawings(Study study, Screen screen, double momentSeconds) {
        this.study = study;
        this.screen = screen;
        this.momentSeconds = momentSeconds;
    }

    /** A span of the outing's seconds; {@code to} is later than {@code from}. */
    public record Span(String title, double fromSeconds, double toSeconds) {}

    /** A span, what its columns hold, and how it looks. */
    public record Drawn(Span span, Columns columns, Block.Figure figure) {}

    /**
     * One drawing for each span; reads the outing once more.
     *
     * @param momentSeconds where a line marks the moment that all of it is about
     */
    public static List<Drawn> of(Study study, List<Span> spans, Screen screen, double momentSeconds)
            throws RecordingException {
        List<Target> targets = spans.stream()
                .map(span -> new Target(
                        new Columns(span.fromSeconds(), span.toSeconds(), TimePlot.COLUMNS), study.times()::seconds))
                .toList();
        DrawingPass.run(study, targets);
        SpanDrawings drawings = new SpanDrawings(study, screen, momentSeconds);
        List<Drawn> drawn = new ArrayList<>();
        for (int i = 0; i < spans.size(); i++) {
            Columns columns = targets.get(i).columns();
            drawn.add(new Drawn(spans.get(i), columns, drawings.figure("t" + i, spans.get(i), columns)));
        }
        return drawn;
    }

    private Block.Figure figure(String id, Span span, Columns columns) {
        Optional<Instant> zero =
                study.times().ofTick(study.member().outing().firstTick()).utc();
        TimePlot.Caption caption = new TimePlot.Caption(
                id,
                description(span, columns),
                new TimeAxis(zero, screen.zone()),
                screen.unit().newtons().doubleValue(),
                screen.unit().symbol(),
                OptionalDouble.of(momentSeconds));
        return new Block.Figure(span.title(), TimePlot.draw(columns, caption));
    }

    private String description(Span span, Columns columns) {
        if (!columns.hasTension()) {
            return span.title() + ": no reading of the tension.";
        }
        String shaft = columns.hasShaft()
                ? String.format(
                        Locale.ROOT,
                        " Shaft speed %.0f to %.0f rpm, drawn below.",
                        columns.leastShaft(),
                        columns.greatestShaft())
                : " No shaft reading.";
        return span.title() + ": tension from " + screen.force(columns.leastOfAll()) + " to "
                + screen.force(columns.greatestOfAll()) + ", limit up to " + screen.force(columns.greatestLimit())
                + (columns.hasGap() ? ", hatched where readings are missing." : ", no reading missing.") + shaft;
    }
}
