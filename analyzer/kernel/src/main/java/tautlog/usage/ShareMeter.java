package tautlog.usage;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import tautlog.rig.Hookup;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.CountBounds;
import tautlog.sample.HookupSource;
import tautlog.sample.Instrument;
import tautlog.sample.QuietEvidence;

/**
 * Counts present samples by what they are of every item's allowed load. Source: {@code FINDINGS.md}, Gear.
 *
 * <p>For each hookup the counts at which an item passes 0.25, 0.5, 0.75 or 1 of what it may carry are worked out once, in decimal, and
 * sorted; between two of them lies a class. A run of samples whose least and greatest lie in one class is added at once. Give it
 * {@link #tension}, or for each run {@link #takeWhole} and, only where that refuses, {@link #take}. Allocates nothing per sample.
 */
public final class ShareMeter extends QuietEvidence {
    private final Instrument instrument;
    private final CountBounds bounds = new CountBounds();
    private final Map<String, ShareClasses> byHookup = new LinkedHashMap<>();
    private final ShareClasses unknown;
    private final Map<Long, ShareClasses> changes = new HashMap<>();
    private ShareClasses inForce;
    private long nextChange = Long.MAX_VALUE;

    ShareMeter(Instrument instrument, Rig rig, Calibration calibration) {
        this.instrument = instrument;
        for (Hookup hookup : rig.hookups()) {
            byHookup.put(hookup.id(), new ShareClasses(hookup, calibration));
        }
        unknown = classes(rig.lowest());
        inForce = classes(rig.assumed());
    }

    private ShareClasses classes(Hookup hookup) {
        return requireNonNull(byHookup.get(hookup.id()));
    }

    /** One that the rig does not know is taken as that with the lowest limit, as the detectors do. */
    @Override
    public void hookup(long atNumber, String id, HookupSource by) {
        changes.put(atNumber, byHookup.getOrDefault(id, unknown));
        nextChange = Math.min(nextChange, atNumber);
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        if ((flags & FLAG_OPEN_BRIDGE) != 0) {
            return;
        }
        bounds.measure(counts, from, n);
        if (!takeWhole(number, n, bounds.least(), bounds.greatest())) {
            take(number, counts, from, n);
        }
    }

    /**
     * Takes {@code n} consecutive present samples from {@code number} on by their bounds alone.
     *
     * @param least exactly, as is {@code greatest}
     * @return false when the bounds do not say enough: then nothing was taken, give the counts to {@link #take}
     */
    public boolean takeWhole(long number, int n, int least, int greatest) {
        turnTo(number);
        return nextChange >= number + n && inForce.takeWhole(n, least, greatest);
    }

    /** Takes {@code n} consecutive present samples, {@code counts[from]} on. */
    public void take(long number, int[] counts, int from, int n) {
        for (int taken = 0; taken < n; ) {
            turnTo(number + taken);
            int some = (int) Math.min(n - taken, nextChange - (number + taken));
            bounds.measure(counts, from + taken, some);
            inForce.take(counts, from + taken, some, bounds.least(), bounds.greatest());
            taken += some;
        }
    }

    private void turnTo(long number) {
        while (nextChange <= number) {
            inForce = requireNonNull(changes.remove(nextChange));
            nextChange = changes.keySet().stream().min(Long::compare).orElse(Long.MAX_VALUE);
        }
    }

    /** The classes of every hookup, whether it was in force or not. */
    Iterable<ShareClasses> all() {
        return byHookup.values();
    }

    TimeSum time(long samples) {
        return samples == 0 ? TimeSum.ZERO : TimeSum.of(samples, instrument.rateMillihertz());
    }

    /** What share of the allowed load {@link GearUse#SHARES} names at {@code place}. */
    static BigDecimal share(int place) {
        return new BigDecimal(GearUse.SHARES.get(place));
    }
}
