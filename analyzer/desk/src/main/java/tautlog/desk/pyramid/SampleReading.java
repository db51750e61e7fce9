package tautlog.desk.pyramid;

import java.util.List;
import tautlog.detect.ShaftSpeed;
import tautlog.sample.Instrument;
import tautlog.sample.QuietEvidence;
import tautlog.sample.SampleTicks;

/** Puts each sample of a time into a band. A shaft speed needs the pulses of the revolution before: what is read begins a little earlier. */
final class SampleReading extends QuietEvidence {
    private final Instrument instrument;
    private final List<Stretch> stretches;
    private final Scale scale;
    private final OutingPyramid.Asked asked;
    private final Band tension;
    private final Band shaft;
    private final SampleTicks ticks;
    private final ShaftSpeed speed;
    private int stretch;
    private Scale.Under under;
    private boolean begun;
    private long nextNumber;
    private long endTick;

    SampleReading(
            Instrument instrument,
            List<Stretch> stretches,
            Scale scale,
            OutingPyramid.Asked asked,
            Band tension,
            Band shaft) {
        this.instrument = instrument;
        this.stretches = stretches;
        this.scale = scale;
        this.asked = asked;
        this.tension = tension;
        this.shaft = shaft;
        ticks = new SampleTicks(instrument);
        speed = new ShaftSpeed(instrument);
        under = stretches.isEmpty()
                ? scale.under(new Stretch(0, 0, false, new Levels()))
                : scale.under(stretches.get(0));
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        ticks.frame(number, tick, n);
        boolean isOpen = (flags & FLAG_OPEN_BRIDGE) != 0;
        if (begun && number > nextNumber) {
            tension.missing(micros(endTick), micros(tick));
        }
        begun = true;
        nextNumber = number + n;
        endTick = ticks.tickOf(n);
        if (!asked.overlaps(tick, endTick)) {
            return;
        }
        if (isOpen) {
            tension.missing(micros(tick), micros(endTick));
        } else if (!together(number, counts, from, n)) {
            samples(number, counts, from, n);
        }
    }

    /** All samples of a frame at once, where they lie in one column and under one zero: most do, and one by one they take long. */
    private boolean together(long number, int[] counts, int from, int n) {
        long at = micros(ticks.tickOf(0));
        long last = micros(ticks.tickOf(n - 1));
        settle(number);
        boolean isOneZero = stretch + 1 >= stretches.size() || stretches.get(stretch + 1).first >= number + n;
        boolean isAllAsked = ticks.tickOf(0) >= asked.begin() && ticks.tickOf(n - 1) < asked.end();
        if (!isOneZero || !isAllAsked || !tension.isOneColumn(at, last)) {
            return false;
        }
        int least = Integer.MAX_VALUE;
        int greatest = Integer.MIN_VALUE;
        for (int i = from; i < from + n; i++) {
            least = Math.min(least, counts[i]);
            greatest = Math.max(greatest, counts[i]);
        }
        tension.add(at, last, under.newtons(least), under.newtons(greatest), n);
        return true;
    }

    private void samples(long number, int[] counts, int from, int n) {
        for (int k = 0; k < n; k++) {
            long tick = ticks.tickOf(k);
            if (tick >= asked.begin() && tick < asked.end()) {
                settle(number + k);
                double newtons = under.newtons(counts[from + k]);
                long at = micros(tick);
                tension.add(at, at, newtons, newtons, 1);
            }
        }
    }

    private void settle(long number) {
        int now = stretch;
        while (now + 1 < stretches.size() && stretches.get(now + 1).first <= number) {
            now++;
        }
        if (now != stretch) {
            stretch = now;
            under = scale.under(stretches.get(now));
        }
    }

    @Override
    public void shaft(long tick, long pulses, long[] pulseTicks, int n) {
        if (instrument.pulsesPerRevolution() == 0) {
            return;
        }
        double rpm = speed.frame(tick, pulses, pulseTicks, n);
        if (!Double.isNaN(rpm) && tick >= asked.begin() && tick < asked.end()) {
            double kept = Extent.units(rpm) / Extent.SHAFT_UNITS;
            shaft.add(micros(tick), micros(tick), kept, kept, 1);
        }
    }

    private long micros(long tick) {
        return scale.axis().micros(tick);
    }
}
