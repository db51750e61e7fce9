package tautlog.logger.simulate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import tautlog.detect.Finding;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;
import tautlog.usage.Hours;

/** What the logger found live in one outing, in the order in which it was told. */
final class JudgedOuting {
    final Instrument instrument;
    final Hours hours;
    final List<Finding> findings = new ArrayList<>();
    /** The same evidence read again, as a report does. */
    final List<Finding> foundLater = new ArrayList<>();

    final List<String> gaps = new ArrayList<>();
    final List<Long> marks = new ArrayList<>();
    long samples;
    long next;

    private final Calibration calibration;
    private int[] counts = new int[1 << 16];

    JudgedOuting(Instrument instrument, Rig rig, Calibration calibration) {
        this.instrument = instrument;
        this.calibration = calibration;
        hours = new Hours(instrument, rig, calibration);
    }

    <F extends Finding> List<F> all(Class<F> kind) {
        return of(kind).toList();
    }

    <F extends Finding> Stream<F> of(Class<F> kind) {
        return findings.stream().filter(kind::isInstance).map(kind::cast);
    }

    void keep(long number, int[] from, int offset, int n) {
        if (number + n > counts.length) {
            counts = Arrays.copyOf(counts, Math.max(2 * counts.length, Math.toIntExact(number + n)));
        }
        System.arraycopy(from, offset, counts, Math.toIntExact(number), n);
    }

    /** The middle of the tensions from one number to another; both are there. */
    double medianNewtons(long first, long last) {
        int[] some = Arrays.copyOfRange(counts, Math.toIntExact(first), Math.toIntExact(last + 1));
        Arrays.sort(some);
        return newtons(some[some.length / 2]);
    }

    /** The greatest rise from any sample to one at most {@code within} later, the later one between two numbers. */
    double greatestRiseNewtons(long first, long last, long within) {
        long greatest = 0;
        for (int j = Math.toIntExact(first); j <= last; j++) {
            for (int i = Math.max(0, j - Math.toIntExact(within)); i < j; i++) {
                greatest = Math.max(greatest, counts[j] - counts[i]);
            }
        }
        return newtons(Math.toIntExact(greatest)) - newtons(0);
    }

    double newtons(int counts) {
        return calibration.newtons(counts);
    }

    /** Samples in this many seconds. */
    long samplesIn(double seconds) {
        return Math.round(seconds * instrument.rate().hertz());
    }
}
