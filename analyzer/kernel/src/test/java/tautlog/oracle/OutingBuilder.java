package tautlog.oracle;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.HookupSource;
import tautlog.sample.Instrument;

/** Writes an outing down in the order of its sample numbers; ticks are the nominal ones from number 0 at tick 0. */
final class OutingBuilder {
    private final Instrument instrument;
    private final Rig rig;
    private final Calibration calibration;
    private final List<OutingData.Frame> frames = new ArrayList<>();
    private final List<OutingData.ShaftFrame> shafts = new ArrayList<>();
    private final List<OutingData.Input> inputs = new ArrayList<>();
    private final List<OutingData.HookupChange> hookups = new ArrayList<>();
    private final List<Integer> open = new ArrayList<>();
    private int openFlags;
    private int samplesPerFrame = 20;
    private long next;
    private long pulses;

    OutingBuilder(Instrument instrument, Rig rig, Calibration calibration) {
        this.instrument = instrument;
        this.rig = rig;
        this.calibration = calibration;
    }

    /** Counts are newtons; the shaft gives one pulse a turn. */
    static OutingBuilder inNewtons(long millihertz, Rig rig) {
        var instrument = new Instrument("TL-TEST", 1, 0, 7, 1_000_000, millihertz, 8_388_607, 1);
        return new OutingBuilder(instrument, rig, Calibration.of("0", "1"));
    }

    OutingBuilder startingAt(long number) {
        next = number;
        return this;
    }

    OutingBuilder framesOf(int samples) {
        samplesPerFrame = samples;
        return this;
    }

    long nextNumber() {
        return next;
    }

    OutingBuilder hold(int counts, long samples) {
        for (long i = 0; i < samples; i++) {
            sample(counts, 0);
        }
        return this;
    }

    OutingBuilder samples(int... counts) {
        for (int c : counts) {
            sample(c, 0);
        }
        return this;
    }

    OutingBuilder openBridge(int... counts) {
        for (int c : counts) {
            sample(c, 2);
        }
        return this;
    }

    OutingBuilder missing(long samples) {
        cutFrame();
        next += samples;
        return this;
    }

    OutingBuilder hookup(String id, HookupSource by) {
        hookups.add(new OutingData.HookupChange(next, id, by));
        return this;
    }

    OutingBuilder input(int present, int state) {
        inputs.add(new OutingData.Input(next, present, state));
        return this;
    }

    /** A SHAFT frame that lists these pulses, after {@code lost} that it does not. */
    OutingBuilder shaft(long tick, long lost, long... pulseTicks) {
        pulses += lost + pulseTicks.length;
        List<Long> listed = java.util.Arrays.stream(pulseTicks).boxed().toList();
        shafts.add(new OutingData.ShaftFrame(tick, pulses, listed));
        return this;
    }

    /** SHAFT frames every 100 ms in (from, to], a pulse in those ticks that are told. */
    OutingBuilder shaftFrames(long fromMillis, long toMillis, IntPredicate isPulseAtMilli) {
        for (long frame = fromMillis + 100; frame <= toMillis; frame += 100) {
            long until = frame;
            long[] ticks = java.util.stream.IntStream.rangeClosed((int) (until - 99), (int) until)
                    .filter(isPulseAtMilli)
                    .mapToLong(milli -> milli * instrument.tickHz() / 1_000)
                    .toArray();
            shaft(frame * instrument.tickHz() / 1_000, 0, ticks);
        }
        return this;
    }

    OutingData build() {
        cutFrame();
        return new OutingData(instrument, rig, calibration, frames, shafts, inputs, hookups);
    }

    private void sample(int counts, int flags) {
        if (!open.isEmpty() && (flags != openFlags || open.size() == samplesPerFrame)) {
            cutFrame();
        }
        openFlags = flags;
        open.add(counts);
        next++;
    }

    private void cutFrame() {
        if (!open.isEmpty()) {
            long number = next - open.size();
            long tick = Math.round((double) number * instrument.tickHz() * 1_000 / instrument.rateMillihertz());
            frames.add(new OutingData.Frame(number, tick, openFlags, open));
            open.clear();
        }
    }
}
