package tautlog.desk.uncertainty;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tautlog.detect.Finding;
import tautlog.sample.QuietEvidence;

/**
 * Counts how many readings of a finding lie near its greatest: they may have been as high, and the highest of them was read.
 *
 * <p>Is told the outing again when its findings are known, in counts from which a moved zero was taken.
 */
public final class NearPeaks extends QuietEvidence {
    private static final int STEPS_IN_SD = 8;
    /** More than the greatest of 10⁹ normal readings stands out with 95 %. */
    private static final int DEEPEST_SD = 7;

    private record Key(int peak, long firstNumber, long lastNumber) {}

    private static final class Span {
        private final Key key;
        private final long[] near = new long[STEPS_IN_SD * DEEPEST_SD];
        private long all;

        Span(Key key) {
            this.key = key;
        }
    }

    private final double sdCounts;
    private final List<Span> spans;
    private final List<Span> open = new ArrayList<>();
    private final Map<Key, Span> byKey = new HashMap<>();
    private int next;

    /** @param slack what the whole outing told of the noise; without it, or without noise, nothing needs to be counted */
    public NearPeaks(SlackStudy slack, List<Finding> findings) {
        sdCounts = slack.noiseCounts().orElse(0);
        if (sdCounts > 0) {
            findings.forEach(this::add);
        }
        spans = byKey.values().stream()
                .sorted(Comparator.comparingLong(span -> span.key.firstNumber))
                .toList();
    }

    private void add(Finding finding) {
        if (finding instanceof Finding.Pull pull) {
            add(new Key(pull.peak(), pull.startNumber(), pull.endNumber()));
        } else if (finding instanceof Finding.Overload overload) {
            add(new Key(overload.peak(), overload.startNumber(), overload.endNumber()));
        } else if (finding instanceof Finding.Shock shock) {
            add(new Key(shock.peak(), shock.startNumber(), shock.peakNumber()));
        } else if (finding instanceof Finding.Jolt jolt) {
            add(new Key(jolt.peak(), jolt.startNumber(), jolt.peakNumber()));
        }
    }

    private void add(Key key) {
        byKey.computeIfAbsent(key, Span::new);
    }

    /** Whether the outing has to be told at all. */
    public boolean isNeeded() {
        return !spans.isEmpty();
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        if ((flags & FLAG_OPEN_BRIDGE) != 0) {
            return;
        }
        while (next < spans.size() && spans.get(next).key.firstNumber < number + n) {
            open.add(spans.get(next++));
        }
        open.removeIf(span -> span.key.lastNumber < number);
        for (Span span : open) {
            int begin = (int) Math.max(0, span.key.firstNumber - number);
            int end = (int) Math.min(n, span.key.lastNumber - number + 1);
            count(span, counts, from + begin, from + end);
        }
    }

    private void count(Span span, int[] counts, int from, int to) {
        double deepest = span.key.peak - DEEPEST_SD * sdCounts;
        for (int i = from; i < to; i++) {
            if (counts[i] > deepest) {
                double below = (span.key.peak - counts[i]) / sdCounts * STEPS_IN_SD;
                span.near[(int) Math.max(0, Math.min(below, span.near.length - 1))]++;
            }
        }
        span.all += Math.max(0, to - from);
    }

    /**
     * How many readings may have been as high as the greatest; between 1 and all between the two numbers, which is the answer for a
     * finding that was not given.
     */
    double asHigh(int peak, long firstNumber, long lastNumber) {
        Span span = byKey.get(new Key(peak, firstNumber, lastNumber));
        if (span == null || span.all == 0) {
            return (double) Math.max(1, lastNumber - firstNumber + 1);
        }
        long[] above = span.near.clone();
        for (int i = 1; i < above.length; i++) {
            above[i] += above[i - 1];
        }
        return NoiseAtTop.asHigh(above, STEPS_IN_SD, span.all);
    }
}
