package tautlog.oracle;

import java.util.List;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.HookupSource;
import tautlog.sample.Instrument;

/** A whole outing as plain data; each list in the order in which its entries became known. */
record OutingData(
        Instrument instrument,
        Rig rig,
        Calibration calibration,
        List<Frame> frames,
        List<ShaftFrame> shafts,
        List<Input> inputs,
        List<HookupChange> hookups) {
    OutingData {
        frames = List.copyOf(frames);
        shafts = List.copyOf(shafts);
        inputs = List.copyOf(inputs);
        hookups = List.copyOf(hookups);
    }

    OutingData withFrames(List<Frame> others) {
        return new OutingData(instrument, rig, calibration, others, shafts, inputs, hookups);
    }

    OutingData withShafts(List<ShaftFrame> others) {
        return new OutingData(instrument, rig, calibration, frames, others, inputs, hookups);
    }

    OutingData withInputs(List<Input> others) {
        return new OutingData(instrument, rig, calibration, frames, shafts, others, hookups);
    }

    OutingData withHookups(List<HookupChange> others) {
        return new OutingData(instrument, rig, calibration, frames, shafts, inputs, others);
    }

    /** @see tautlog.sample.Evidence#tension */
    record Frame(long number, long tick, int flags, List<Integer> counts) {
        Frame {
            counts = List.copyOf(counts);
        }

        long lastNumber() {
            return number + counts.size() - 1;
        }

        boolean isOpenBridge() {
            return (flags & 2) != 0;
        }
    }

    /** @see tautlog.sample.Evidence#shaft */
    record ShaftFrame(long tick, long pulses, List<Long> pulseTicks) {
        ShaftFrame {
            pulseTicks = List.copyOf(pulseTicks);
        }
    }

    /** @see tautlog.sample.Evidence#input */
    record Input(long atNumber, int present, int state) {}

    /** @see tautlog.sample.Evidence#hookup */
    record HookupChange(long atNumber, String id, HookupSource by) {}
}
