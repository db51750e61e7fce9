package tautlog.desk.incident;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import tautlog.desk.analysis.Study;
import tautlog.detect.Detection;
import tautlog.detect.Finding;
import tautlog.detect.FindingSink;
import tautlog.detect.Known;
import tautlog.detect.Second;
import tautlog.recording.RecordingException;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;
import tautlog.sample.QuietEvidence;

/** Reads one outing again for what the readings around a moment say. Allocates per frame and shaft reading, not per sample. */
final class Witness extends QuietEvidence implements FindingSink {
    /** Source: {@code FINDINGS.md}, Hours: a shaft reading speaks for one second at most. */
    private static final double SHAFT_SPEAKS_SECONDS = 1;

    private static final Readings.Gap NO_GAP =
            new Readings.Gap(Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, Readings.Kind.MISSING);

    private static final int CLUTCH = 2;
    private static final int BRAKE = 4;

    private final Study study;
    private final Instrument instrument;
    private final Calibration calibration;
    private final Detection shaftReadings;
    private final double secondsPerSample;
    private final Span window;
    private final double at;
    private final Greatest inWindow;
    private final Greatest inSubject;
    private final TreeMap<Double, Double> rpm = new TreeMap<>();
    private final TreeMap<Long, Switches> inputs = new TreeMap<>();
    private final List<Readings.Gap> gaps = new ArrayList<>();
    private long samples;
    private long endStops;
    private boolean begun;
    private long nextNumber;
    private double last;
    private OptionalDouble before = OptionalDouble.empty();
    private OptionalDouble after = OptionalDouble.empty();
    private Readings.Health health = Readings.Health.NOTHING;

    private Witness(Study study, Span window, double at, Span subject) {
        this.study = study;
        this.window = window;
        this.at = at;
        instrument = study.member().outing().start().instrument();
        calibration = study.calibration();
        shaftReadings = new Detection(instrument, study.rig(), calibration, this);
        secondsPerSample = 1 / instrument.rate().hertz();
        inWindow = new Greatest(window);
        inSubject = new Greatest(subject);
    }

    /** Seconds of an outing, both ends included; one that ends before it begins holds nothing. */
    record Span(double from, double to) {
        static final Span NOTHING = new Span(0, -1);

        boolean holds(double seconds) {
            return from <= seconds && seconds <= to;
        }
    }

    private record Switches(int present, int state) {
        Known bit(int mask) {
            return (present & mask) == 0 ? Known.UNKNOWN : (state & mask) == 0 ? Known.NO : Known.YES;
        }
    }

    /** @param subject what the report is about */
    static Readings of(Study study, Span window, double at, Span subject) throws RecordingException {
        Witness witness = new Witness(study, window, at, subject);
        study.member()
                .recording()
                .replay(study.member().outing(), study.member().lessZero(study.calibration(), witness));
        return witness.readings();
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        shaftReadings.tension(number, tick, flags, counts, from, n);
        double start = study.times().seconds(tick);
        double end = start + (n - 1) * secondsPerSample;
        if (begun && number > nextNumber) {
            gap(last + secondsPerSample, start, Readings.Kind.MISSING);
        }
        boolean open = (flags & FLAG_OPEN_BRIDGE) != 0;
        if (open) {
            gap(start, end + secondsPerSample, Readings.Kind.OPEN_BRIDGE);
        } else {
            samples(number, start, counts, from, n);
        }
        begun = true;
        nextNumber = number + n;
        last = end;
    }

    /** Frames that follow each other make one gap of their kind. */
    private void gap(double from, double to, Readings.Kind kind) {
        if (to >= window.from() && from <= window.to()) {
            Readings.Gap before = gaps.isEmpty() ? NO_GAP : gaps.get(gaps.size() - 1);
            boolean goesOn = before.kind() == kind && from - before.toSeconds() < secondsPerSample;
            if (goesOn) {
                gaps.remove(gaps.size() - 1);
            }
            gaps.add(new Readings.Gap(goesOn ? before.fromSeconds() : from, to, kind));
        }
    }

    private void samples(long number, double start, int[] counts, int from, int n) {
        for (int i = 0; i < n; i++) {
            double seconds = start + i * secondsPerSample;
            int count = counts[from + i];
            if (seconds <= at) {
                before = OptionalDouble.of(seconds);
            } else if (after.isEmpty()) {
                after = OptionalDouble.of(seconds);
            }
            if (window.holds(seconds)) {
                samples++;
                endStops += instrument.isAtEndStop(count) ? 1 : 0;
            }
            inWindow.sample(number + i, seconds, count);
            inSubject.sample(number + i, seconds, count);
        }
    }

    @Override
    public void shaft(long tick, long pulses, long[] pulseTicks, int n) {
        shaftReadings.shaft(tick, pulses, pulseTicks, n);
    }

    @Override
    public void shaftReading(long tick, double reading) {
        rpm.put(study.times().seconds(tick), reading);
    }

    @Override
    public void input(long atNumber, long tick, int selector, int present, int state) {
        inputs.put(atNumber, new Switches(present, state));
    }

    @Override
    public void health(long tick, int supplyMillivolts, int temperatureDecidegrees, long lost) {
        if (study.times().seconds(tick) <= window.to()) {
            health = new Readings.Health(
                    OptionalDouble.of(supplyMillivolts / 1000.0), OptionalDouble.of(temperatureDecidegrees / 10.0));
        }
    }

    private Readings readings() {
        return new Readings(
                samples,
                inWindow.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(calibration.newtons(inWindow.least())),
                inWindow.isEmpty()
                        ? OptionalDouble.empty()
                        : OptionalDouble.of(calibration.newtons(inWindow.greatest())),
                inWindow.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(inWindow.seconds()),
                endStops,
                gaps,
                before,
                after,
                atGreatest(),
                health);
    }

    private Readings.AtGreatest atGreatest() {
        if (inSubject.isEmpty()) {
            return Readings.AtGreatest.NOTHING;
        }
        Map.Entry<Long, Switches> said = inputs.floorEntry(inSubject.number());
        Map.Entry<Double, Double> turned = rpm.floorEntry(inSubject.seconds());
        boolean fresh = turned != null && inSubject.seconds() - turned.getKey() <= SHAFT_SPEAKS_SECONDS;
        return new Readings.AtGreatest(
                OptionalDouble.of(inSubject.seconds()),
                fresh ? OptionalDouble.of(turned.getValue()) : OptionalDouble.empty(),
                said == null ? Known.UNKNOWN : said.getValue().bit(CLUTCH),
                said == null ? Known.UNKNOWN : said.getValue().bit(BRAKE));
    }

    @Override
    public void finding(Finding finding) {}

    @Override
    public void second(Second second) {}

    @Override
    public void cycle(long rangeCounts, long twiceMeanCounts, int halves) {}
}
