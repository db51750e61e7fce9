package tautlog.usage;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tautlog.rig.Hookup;
import tautlog.rig.LoadedItem;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;

/**
 * Sorts the rainflow cycles of one outing by what part of the line's working load limit they span. Of a rig with several winch's lines
 * each is taken to have borne all cycles: a cycle does not tell its hookup.
 */
final class RopeMeter {
    private final Calibration calibration;
    /** What each of the winch's lines may carry: the least over the hookups. */
    private final Map<String, Double> allowedNewtons = new TreeMap<>();

    private final Map<String, long[]> halfCycles = new TreeMap<>();
    private final Map<String, Long> nanocycles = new TreeMap<>();

    RopeMeter(Rig rig, Calibration calibration) {
        this.calibration = calibration;
        for (Hookup hookup : rig.hookups()) {
            hookup.items().stream()
                    .filter(LoadedItem::isWinchLine)
                    .forEach(item -> allowedNewtons.merge(item.gear(), allowed(item), Math::min));
        }
        allowedNewtons.keySet().forEach(gear -> {
            halfCycles.put(gear, new long[RopeUse.EDGES.size() + 1]);
            nanocycles.put(gear, 0L);
        });
    }

    /** By the line's tension, which is what cycles are of. */
    private static double allowed(LoadedItem item) {
        BigDecimal tension = item.tensionAtAllowed();
        return tension.doubleValue();
    }

    /** As {@link tautlog.detect.FindingSink#cycle}. */
    void cycle(long rangeCounts, long twiceMeanCounts, int halves) {
        double range = calibration.newtons((twiceMeanCounts + rangeCounts) / 2.0)
                - calibration.newtons((twiceMeanCounts - rangeCounts) / 2.0);
        allowedNewtons.forEach((gear, allowed) -> {
            double share = range / allowed;
            requireNonNull(halfCycles.get(gear))[RopeUse.classOf(share)] += halves;
            nanocycles.merge(gear, RopeUse.nanocycles(share, halves), Math::addExact);
        });
    }

    List<RopeUse> uses() {
        return uses(false);
    }

    /** Of an outing whose readings are gone. */
    List<RopeUse> usesWithoutReadings() {
        return uses(true);
    }

    private List<RopeUse> uses(boolean isAtLeast) {
        return halfCycles.entrySet().stream()
                .map(rope -> new RopeUse(
                        rope.getKey(),
                        Arrays.stream(rope.getValue()).boxed().toList(),
                        nanocycles.getOrDefault(rope.getKey(), 0L),
                        isAtLeast))
                .toList();
    }
}
