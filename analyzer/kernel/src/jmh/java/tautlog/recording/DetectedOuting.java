package tautlog.recording;

import tautlog.detect.Detection;
import tautlog.detect.Finding;
import tautlog.detect.FindingSink;
import tautlog.detect.Second;
import tautlog.fixtures.Rigs;
import tautlog.sample.Calibration;
import tautlog.sample.Evidence;
import tautlog.sample.Instrument;
import tautlog.sample.QuietEvidence;

/** Records what a trace tells, with the seconds that the detectors make of it and, if asked, their findings. */
final class DetectedOuting extends QuietEvidence implements FindingSink {
    /** What of the detectors' words is recorded. */
    enum Said {
        SECONDS,
        ALL
    }

    private final OutingWriter outing;
    private final Said said;
    private final Evidence detection;

    DetectedOuting(OutingWriter outing, Instrument instrument, Calibration calibration, Said said) {
        this.outing = outing;
        this.said = said;
        detection = new Detection(instrument, Rigs.withLimit("20000", "15000"), calibration, this);
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        outing.tension(number, tick, flags, counts, from, n);
        detection.tension(number, tick, flags, counts, from, n);
    }

    @Override
    public void shaft(long tick, long pulses, long[] pulseTicks, int n) {
        outing.shaft(tick, pulses, pulseTicks, n);
        detection.shaft(tick, pulses, pulseTicks, n);
    }

    @Override
    public void input(long atNumber, long tick, int selector, int present, int state) {
        outing.input(atNumber, tick, selector, present, state);
        detection.input(atNumber, tick, selector, present, state);
    }

    @Override
    public void health(long tick, int supplyMillivolts, int temperatureDecidegrees, long lost) {
        outing.health(tick, supplyMillivolts, temperatureDecidegrees, lost);
    }

    @Override
    public void clock(long tick, long utcMicros) {
        outing.clock(tick, utcMicros);
    }

    @Override
    public void end() {
        detection.end();
    }

    @Override
    public void finding(Finding finding) {
        if (said == Said.ALL) {
            outing.finding(finding);
        }
    }

    @Override
    public void second(Second second) {
        outing.second(second);
    }

    @Override
    public void cycle(long rangeCounts, long twiceMeanCounts, int halves) {}

    @Override
    public void shaftReading(long tick, double rpm) {}
}
