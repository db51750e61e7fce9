package tautlog.desk.uncertainty;

import java.util.List;
import java.util.stream.Stream;
import tautlog.detect.Finding;

/**
 * Which peaks of an outing rose fast, and within how many samples: a peak between two samples is not seen. Source: {@code
 * analyzer/FINDINGS.md}, Shock, "What sampling hides".
 */
final class FastPeaks {
    /** Samples of a rise that was not seen to be fast. */
    static final long SLOW = Long.MAX_VALUE;

    private record Rise(long peakNumber, int peak, long samples) {}

    private final List<Rise> rises;

    FastPeaks(List<Finding> findings) {
        Stream<Rise> shocks = findings.stream()
                .filter(Finding.Shock.class::isInstance)
                .map(Finding.Shock.class::cast)
                .map(shock -> new Rise(shock.peakNumber(), shock.peak(), shock.peakNumber() - shock.startNumber()));
        Stream<Rise> jolts = findings.stream()
                .filter(Finding.Jolt.class::isInstance)
                .map(Finding.Jolt.class::cast)
                .map(jolt -> new Rise(jolt.peakNumber(), jolt.peak(), jolt.peakNumber() - jolt.startNumber()));
        rises = Stream.concat(shocks, jolts).toList();
    }

    /** Samples from the foot of the fastest rise to a peak of {@code peak} counts between two sample numbers. */
    long riseTo(int peak, long firstNumber, long lastNumber) {
        return rises.stream()
                .filter(rise -> rise.peak == peak && rise.peakNumber >= firstNumber && rise.peakNumber <= lastNumber)
                .mapToLong(Rise::samples)
                .min()
                .orElse(SLOW);
    }
}
