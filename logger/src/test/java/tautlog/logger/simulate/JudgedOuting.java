package tautlog.logger.simulate;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
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
    final List<String> gaps = new ArrayList<>();
    final List<Long> marks = new ArrayList<>();
    long samples;
    long next;
    double greatestShaftRpm;

    private final Calibration calibration;

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

    double newtons(int counts) {
        return calibration.newtons(counts);
    }

    /** Samples in this many seconds. */
    long samples(double seconds) {
        return Math.round(seconds * instrument.rate().hertz());
    }

    /** The greatest tension that was found in a pull. */
    OptionalDouble greatestNewtons() {
        return of(Finding.Pull.class).mapToDouble(pull -> newtons(pull.peak())).max();
    }
}
