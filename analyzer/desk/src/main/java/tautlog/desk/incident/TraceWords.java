package tautlog.desk.incident;

import java.util.Locale;
import tautlog.desk.drawing.SpanDrawings;
import tautlog.desk.page.Screen;
import tautlog.desk.plot.Columns;

/** What a trace shows, for who does not see it. */
final class TraceWords {
    private TraceWords() {}

    static String of(SpanDrawings.Drawn trace, Screen screen) {
        Columns columns = trace.columns();
        if (!columns.hasTension()) {
            return trace.span().title() + ": no reading of the tension.";
        }
        return trace.span().title() + ": tension from " + screen.force(columns.leastOfAll()) + " to "
                + screen.force(columns.greatestOfAll())
                + (columns.hasGap() ? "; readings are missing" : "; no reading is missing")
                + (columns.hasShaft()
                        ? String.format(
                                Locale.ROOT, "; shaft %.0f to %.0f rpm.", columns.leastShaft(), columns.greatestShaft())
                        : "; no shaft reading.");
    }
}
