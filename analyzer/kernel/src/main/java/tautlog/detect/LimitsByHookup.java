package tautlog.detect;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;
import tautlog.rig.Hookup;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.HookupSource;

/** The limits of every hookup of a rig, and which of them is in force at a sample number. */
final class LimitsByHookup {
    private record Change(long number, HookupLimits limits) {}

    private final Map<String, HookupLimits> said = new HashMap<>();
    private final Map<String, HookupLimits> assumed = new HashMap<>();
    private final HookupLimits unknown;
    private final Deque<Change> changes = new ArrayDeque<>();
    private HookupLimits inForce;

    /** Begins with the hookup that the rig assumes. */
    LimitsByHookup(Rig rig, Calibration calibration) {
        for (Hookup hookup : rig.hookups()) {
            said.put(hookup.id(), limits(hookup, false, rig, calibration));
            assumed.put(hookup.id(), limits(hookup, true, rig, calibration));
        }
        unknown = limits(rig.lowest(), true, rig, calibration);
        inForce = assumed.getOrDefault(rig.assumed().id(), unknown);
    }

    private static HookupLimits limits(Hookup hookup, boolean isAssumed, Rig rig, Calibration calibration) {
        return new HookupLimits(hookup, isAssumed, rig.detect().overloadClear(), calibration);
    }

    /** From sample {@code number} on, the hookup {@code id} is on; one that the rig does not know is taken as the lowest. */
    void change(long number, String id, HookupSource by) {
        changes.add(new Change(number, (by.isAssumed() ? assumed : said).getOrDefault(id, unknown)));
    }

    HookupLimits inForce() {
        return inForce;
    }

    /** Moves to sample {@code number}; returns how many of {@code n} samples from there have the same hookup. */
    int cut(long number, int n) {
        while (!changes.isEmpty() && changes.getFirst().number <= number) {
            inForce = changes.removeFirst().limits;
        }
        return changes.isEmpty() ? n : (int) Math.min(n, changes.getFirst().number - number);
    }
}
