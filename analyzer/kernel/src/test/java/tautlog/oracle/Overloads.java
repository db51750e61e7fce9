package tautlog.oracle;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import tautlog.detect.Finding;

/** The paragraph Overload. */
final class Overloads {
    private enum Ended {
        CLOSED,
        SPLIT,
        BY_GAP,
        BY_END
    }

    private final Line line;

    Overloads(Line line) {
        this.line = line;
    }

    List<Finding.Overload> all() {
        List<Finding.Overload> overloads = new ArrayList<>();
        int place = 0;
        while (place < line.size) {
            // "Opens at a sample with T > L."
            if (isOver(place)) {
                place = follow(place, overloads);
            } else {
                place++;
            }
        }
        return overloads;
    }

    private boolean isOver(int place) {
        return line.isAbove(place, line.limit[place]);
    }

    /** "Closes when T ≤ overload_clear (0.95) · L for overload_quiet (0.5 s)." "A change of hookup splits it." */
    private int follow(int start, List<Finding.Overload> overloads) {
        int last = line.lastBeforeLongGap(start);
        long needed = line.samplesIn(line.settings.overloadQuietSeconds());
        long run = 0;
        for (int i = start; i <= last; i++) {
            if (!line.hookup[i].id().equals(line.hookup[start].id())) {
                overloads.add(overload(start, i - 1, Ended.SPLIT));
                return i;
            }
            BigDecimal clear = line.settings.overloadClear().multiply(line.limit[i]);
            run = line.isAbove(i, clear) ? 0 : run + 1;
            if (run == needed) {
                overloads.add(overload(start, i, Ended.CLOSED));
                return i + 1;
            }
        }
        overloads.add(overload(start, last, last == line.size - 1 ? Ended.BY_END : Ended.BY_GAP));
        return last + 1;
    }

    /** "End: the last sample with T > L." */
    private Finding.Overload overload(int start, int until, Ended ended) {
        int end = until;
        while (!isOver(end)) {
            end--;
        }
        long above = 0;
        for (int i = start; i <= end; i++) {
            above += isOver(i) ? 1 : 0;
        }
        return new Finding.Overload(
                line.number[start],
                line.number[end],
                above,
                line.count[line.greatest(start, end)],
                line.hookup[start].id(),
                line.assumed[start],
                // "at_least is said when a sample from its start to its end …"
                line.isLowerBound(start, end),
                line.shortGapBetween(start, end) || (ended == Ended.CLOSED && line.shortGapBetween(end, until)),
                ended == Ended.BY_GAP,
                ended == Ended.BY_END);
    }
}
