package tautlog.desk.uncertainty;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import tautlog.detect.Finding;
import tautlog.sample.Calibration;
import tautlog.sample.QuietEvidence;

/**
 * How fast the line rose to the shocks and jolts of an outing: a peak between two samples is not seen. Source: {@code
 * analyzer/FINDINGS.md}, Shock, "What sampling hides".
 *
 * <p>Is told the outing again when its findings are known, in counts from which a moved zero was taken. A rise that it was not told of
 * is one of which nothing is known.
 */
public final class FastPeaks extends QuietEvidence {
    /** From foot to greatest reading. */
    private static final class Rise {
        private final long foot;
        private final long top;
        private final int peak;
        private int[] counts = new int[64];
        private int seen;
        private Steepness steepness = Steepness.TOO_STEEP;

        Rise(long foot, long top, int peak) {
            this.foot = foot;
            this.top = top;
            this.peak = peak;
        }

        void take(int count) {
            if (seen == counts.length) {
                counts = Arrays.copyOf(counts, 2 * seen);
            }
            counts[seen++] = count;
        }
    }

    private final Calibration line;
    private final List<Rise> rises;
    private final List<Rise> open = new ArrayList<>();
    private int next;

    /** @param line the calibration of the line's tension */
    public FastPeaks(Calibration line, List<Finding> findings) {
        this.line = line;
        rises = findings.stream()
                .flatMap(FastPeaks::riseOf)
                .sorted(Comparator.comparingLong(rise -> rise.foot))
                .toList();
    }

    private static Stream<Rise> riseOf(Finding finding) {
        if (finding instanceof Finding.Shock shock) {
            return Stream.of(new Rise(shock.startNumber(), shock.peakNumber(), shock.peak()));
        }
        return finding instanceof Finding.Jolt jolt
                ? Stream.of(new Rise(jolt.startNumber(), jolt.peakNumber(), jolt.peak()))
                : Stream.empty();
    }

    /** Whether the outing has to be told at all. */
    public boolean isNeeded() {
        return !rises.isEmpty();
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        if ((flags & FLAG_OPEN_BRIDGE) != 0) {
            return;
        }
        while (next < rises.size() && rises.get(next).foot < number + n) {
            open.add(rises.get(next++));
        }
        for (Rise rise : open) {
            int begin = (int) Math.max(0, rise.foot - number);
            int end = (int) Math.min(n, rise.top - number + 1);
            for (int i = begin; i < end; i++) {
                rise.take(counts[from + i]);
            }
            if (rise.top >= number && rise.top < number + n) {
                close(rise);
            }
        }
        open.removeIf(rise -> rise.top < number + n);
    }

    private void close(Rise rise) {
        if (rise.seen > 1 && rise.counts[rise.seen - 1] > rise.counts[0]) {
            double[] newtons = Arrays.stream(rise.counts, 0, rise.seen)
                    .mapToDouble(line::newtons)
                    .toArray();
            rise.steepness = Steepness.of(rise.top - rise.foot, newtons);
        }
        rise.counts = new int[0];
    }

    /** Of the rise between two sample numbers; of one that is no finding's only its length is known. */
    Steepness steepness(long foot, long top) {
        return rises.stream()
                .filter(rise -> rise.foot == foot && rise.top == top)
                .map(rise -> rise.steepness)
                .findFirst()
                .orElseGet(() -> Steepness.ofLength(top - foot));
    }

    /** Whether nothing bounds what the line did between two readings somewhere from {@code firstNumber} to {@code lastNumber}. */
    boolean isTooFast(long firstNumber, long lastNumber) {
        return within(firstNumber, lastNumber).anyMatch(rise -> !rise.steepness.isResolved());
    }

    /** The highest crest there, in newtons, with nothing added where no line rose fast; {@code newtons} or more. */
    double crest(double newtons, long firstNumber, long lastNumber) {
        return within(firstNumber, lastNumber)
                .mapToDouble(rise -> rise.steepness.crest(line.newtons(rise.peak)))
                .reduce(newtons, Math::max);
    }

    private Stream<Rise> within(long firstNumber, long lastNumber) {
        return rises.stream().filter(rise -> rise.foot < lastNumber && rise.top >= firstNumber);
    }
}
