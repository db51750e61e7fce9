package tautlog.desk.uncertainty;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import tautlog.calibration.CellCalibration;
import tautlog.desk.report.Derivation;
import tautlog.desk.report.Entry;
import tautlog.desk.report.Moment;
import tautlog.detect.Detection;
import tautlog.detect.Finding;
import tautlog.detect.SlackProof;
import tautlog.fixtures.Findings;
import tautlog.recording.RecordingException;
import tautlog.rig.LineCalibration;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Evidence;
import tautlog.sample.Instrument;
import tautlog.sample.QuietEvidence;
import tautlog.sample.ZeroShift;
import tautlog.sample.ZeroSource;

/**
 * An outing of which the truth is known: true tensions become counts with noise and a zero that is off, and go through what the report
 * puts them through: the zero that follows, detectors, slack, the derivation of newtons and intervals.
 */
final class SimulatedOuting {
    private static final int FRAME = 10;

    /** What the instrument does to the truth. */
    record Errors(SimulatedCell cell, double noiseCounts, double carriedPerTension, boolean zeroFollows) {}

    /** The findings, and what derives them. */
    record Reported(List<Finding> findings, Derivation derivation, Doubt.Zero zero) {
        List<Entry.Pull> pulls() {
            return derived(Finding.Pull.class, derivation::pull);
        }

        List<Entry.Shock> shocks() {
            return derived(Finding.Shock.class, derivation::shock);
        }

        List<Entry.Jolt> jolts() {
            return derived(Finding.Jolt.class, derivation::jolt);
        }

        List<Entry.Overload> overloads() {
            return derived(Finding.Overload.class, derivation::overload);
        }

        private <F extends Finding, E> List<E> derived(Class<F> kind, Derivation.Step<F, E> step) {
            List<E> entries = new ArrayList<>();
            try {
                Derivation.each(findings, kind, step, entries);
            } catch (RecordingException e) {
                throw new AssertionError("nothing is recorded here", e);
            }
            return entries;
        }
    }

    private final Errors errors;
    private final CellCalibration calibration;
    private final Rig rig;
    private final Instrument instrument;
    private final Random random;
    private int[] counts = new int[1024];
    private int n;

    SimulatedOuting(Errors errors, CellCalibration calibration, Rig rig, int hertz, Random random) {
        this.errors = errors;
        this.calibration = calibration;
        this.rig = rig;
        this.random = random;
        instrument = new Instrument("TL-0001", 1, 0, 7, 1_000_000, 1_000L * hertz, 8_388_607, 0);
    }

    /** One sample of a line under {@code tension} newtons, the zero off by {@code zero} newtons of tension. */
    private void sample(double tension, double zero, double scatterCounts) {
        if (n == counts.length) {
            counts = Arrays.copyOf(counts, 2 * n);
        }
        double cellNewtons = tension * errors.carriedPerTension + zero * SimulatedCell.CARRIED;
        double noise = errors.noiseCounts * random.nextGaussian();
        counts[n++] = (int) Math.round(errors.cell.countsAt(cellNewtons) + scatterCounts + noise);
    }

    void slack(int samples, double zero) {
        hold(samples, 0, zero);
    }

    /** What hangs on the line is no pull; newtons. */
    void hold(int samples, double tension, double zero) {
        for (int i = 0; i < samples; i++) {
            sample(tension, zero, 0);
        }
    }

    /** One pull: what its load reads beside the response is the same throughout. */
    void pull(double[] tensions, double zero) {
        double scatter = errors.cell.scatterCounts() * random.nextGaussian();
        for (double tension : tensions) {
            sample(tension, zero, scatter);
        }
    }

    Reported reported() {
        Calibration line = LineCalibration.of(calibration.response(), rig);
        Findings findings = new Findings();
        SlackStudy slack = new SlackStudy(instrument, rig, line);
        SlackProof proof = new SlackProof(instrument, rig, line);
        Told told = new Told(new Detection(instrument, rig, line, findings), slack, proof);
        follow(new ZeroShift(instrument, told), proof);
        NearPeaks nearPeaks = new NearPeaks(slack, findings.told());
        nearPeaks.tension(0, 0, 0, told.counts, 0, n);
        FastPeaks fastPeaks = new FastPeaks(line, findings.told());
        fastPeaks.tension(0, 0, 0, told.counts, 0, n);
        Doubt.Zero zero = proof.isProven() ? Doubt.Zero.PROVEN : Doubt.Zero.UNPROVEN;
        Doubt doubt = new Doubt(instrument, calibration, line, rig, true, slack, zero, fastPeaks, nearPeaks);
        return new Reported(
                findings.told(), new Derivation(rig, line, instrument.rate(), new Nowhere(told.counts), doubt), zero);
    }

    /** As the logger does: a zero that was proven holds from the sample after the frame. */
    private void follow(ZeroShift evidence, SlackProof proof) {
        int shift = 0;
        long ticksPerSample = instrument.tickHz() * 1_000 / instrument.rateMillihertz();
        for (int from = 0; from < n; from += FRAME) {
            int samples = Math.min(FRAME, n - from);
            evidence.tension(from, from * ticksPerSample, 0, counts, from, samples);
            Optional<SlackProof.Found> found = proof.found();
            if (errors.zeroFollows && found.isPresent() && found.get().shiftCounts() != shift) {
                shift = found.get().shiftCounts();
                evidence.zero((long) from + samples, shift, found.get().by());
            }
        }
        evidence.end();
    }

    /** Tells everybody, and keeps the counts from which the moved zero was taken. */
    private final class Told extends QuietEvidence {
        private final List<Evidence> listeners = new ArrayList<>();
        private final int[] counts = new int[n];

        Told(Evidence... listeners) {
            this.listeners.addAll(List.of(listeners));
        }

        @Override
        public void tension(long number, long tick, int flags, int[] shifted, int from, int samples) {
            System.arraycopy(shifted, from, counts, (int) number, samples);
            listeners.forEach(listener -> listener.tension(number, tick, flags, shifted, from, samples));
        }

        @Override
        public void zero(long atNumber, int shiftCounts, ZeroSource by) {
            listeners.forEach(listener -> listener.zero(atNumber, shiftCounts, by));
        }

        @Override
        public void end() {
            listeners.forEach(Evidence::end);
        }
    }

    /** Where and when do not matter here. */
    private record Nowhere(int[] counts) implements Derivation.Places {
        @Override
        public Moment atNumber(long number) {
            return new Moment(Optional.empty(), 1, 0);
        }

        @Override
        public Moment atTick(long tick) {
            return new Moment(Optional.empty(), 1, 0);
        }

        @Override
        public int countAt(long number) {
            return counts[(int) number];
        }

        @Override
        public String hookupAt(long number) {
            return "straight";
        }

        @Override
        public boolean isAssumed(long number) {
            return false;
        }
    }
}
