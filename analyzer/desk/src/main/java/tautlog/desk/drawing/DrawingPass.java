package tautlog.desk.drawing;

import java.util.List;
import tautlog.desk.analysis.HookupTrack;
import tautlog.desk.analysis.Study;
import tautlog.detect.Detection;
import tautlog.detect.Finding;
import tautlog.detect.FindingSink;
import tautlog.detect.Second;
import tautlog.recording.Outing;
import tautlog.recording.RecordingException;
import tautlog.sample.Curve;
import tautlog.sample.Instrument;
import tautlog.sample.QuietEvidence;

/** Reads one outing again and puts every sample and shaft reading into the drawings that show its time. */
final class DrawingPass extends QuietEvidence implements FindingSink {
    private final List<Target> targets;
    private final HookupTrack hookups;
    private final Detection shaftReadings;
    private final Curve curve;
    private final double ticksPerSample;
    private boolean begun;
    private long nextNumber;
    private long lastTick;

    private DrawingPass(Study study, List<Target> targets) {
        this.targets = targets;
        hookups = study.hookups();
        Instrument instrument = study.member().outing().start().instrument();
        shaftReadings = new Detection(instrument, study.rig(), study.calibration(), this);
        curve = study.calibration().curve();
        ticksPerSample = instrument.tickHz() / instrument.rate().hertz();
    }

    static void run(Study study, List<Target> targets) throws RecordingException {
        if (!targets.isEmpty()) {
            Outing outing = study.member().outing();
            if (outing.thinned()) {
                noReadings(outing, targets);
            }
            DrawingPass pass = new DrawingPass(study, targets);
            study.member().recording().replay(outing, study.member().lessZero(study.calibration(), pass));
        }
    }

    private static void noReadings(Outing outing, List<Target> targets) {
        for (Target target : targets) {
            target.columns()
                    .gap(
                            target.seconds().of(outing.firstTick()),
                            target.seconds().of(outing.lastTick()));
        }
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        shaftReadings.tension(number, tick, flags, counts, from, n);
        long end = tick + Math.round(n * ticksPerSample);
        long before = begun ? lastTick : tick;
        boolean jump = begun && number > nextNumber;
        boolean open = (flags & FLAG_OPEN_BRIDGE) != 0;
        double limit = hookups.at(number).hookup().limit().newtons().doubleValue();
        for (Target target : targets) {
            double start = target.seconds().of(before);
            double stop = target.seconds().of(end);
            if (target.columns().covers(start, stop)) {
                target.columns().limit(start, stop, limit);
                if (jump || open) {
                    target.columns().gap(start, open ? stop : target.seconds().of(tick));
                }
                if (!open) {
                    samples(target, tick, end, counts, from, n);
                }
            }
        }
        begun = true;
        nextNumber = number + n;
        lastTick = tick + Math.round((n - 1) * ticksPerSample);
    }

    private void samples(Target target, long tick, long end, int[] counts, int from, int n) {
        double start = target.seconds().of(tick);
        double step = (target.seconds().of(end) - start) / n;
        for (int i = 0; i < n; i++) {
            target.columns().tension(start + i * step, curve.newtons(counts[from + i]));
        }
    }

    @Override
    public void shaftReading(long tick, double rpm) {
        for (Target target : targets) {
            target.columns().shaft(target.seconds().of(tick), rpm);
        }
    }

    @Override
    public void shaft(long tick, long pulses, long[] pulseTicks, int n) {
        shaftReadings.shaft(tick, pulses, pulseTicks, n);
    }

    @Override
    public void finding(Finding finding) {}

    @Override
    public void second(Second second) {}

    @Override
    public void cycle(long rangeCounts, long twiceMeanCounts, int halves) {}
}
