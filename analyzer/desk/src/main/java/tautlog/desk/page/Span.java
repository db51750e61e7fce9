package tautlog.desk.page;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import tautlog.desk.report.Entry;
import tautlog.desk.report.Moment;

/**
 * A pull, or the time between two, as a heading for what happened in it.
 *
 * @param outing the outing's place in the history, from 1
 * @param begun how many pulls of the report had begun by then
 * @param pull empty between pulls
 */
record Span(int outing, int begun, Optional<Entry.Pull> pull) implements Comparable<Span> {
    private static final Comparator<Span> IN_TIME = Comparator.comparingInt(Span::outing)
            .thenComparingInt(Span::begun)
            .thenComparing(span -> span.pull().isEmpty());

    /** @param pulls in the order of time */
    static Span of(Moment at, List<Entry.Pull> pulls) {
        int begun = 0;
        while (begun < pulls.size() && pulls.get(begun).start().compareTo(at) <= 0) {
            begun++;
        }
        Optional<Entry.Pull> latest = begun == 0 ? Optional.empty() : Optional.of(pulls.get(begun - 1));
        return new Span(at.outing(), begun, latest.filter(pull -> at.compareTo(pull.end()) <= 0));
    }

    @Override
    public int compareTo(Span other) {
        return IN_TIME.compare(this, other);
    }

    String heading(Screen screen) {
        return pull.map(of -> "Pull " + screen.time(of.start()) + " to " + screen.time(of.end()) + ", "
                        + of.against().hookup() + ": up to " + screen.force(of.peakNewtons(), of.atLeast())
                        + screen.interval(of.peakInterval()) + ", "
                        + Screen.share(of.share(), of.shareBounds(), of.against(), of.atLeast())
                        + (of.hasGap() || of.cutByGap() ? "; readings are missing" : "")
                        + (of.cutByEnd() ? "; cut off by the outing's end" : ""))
                .orElse("Outside a pull");
    }
}
