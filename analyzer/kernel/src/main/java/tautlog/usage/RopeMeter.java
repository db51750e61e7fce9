package tautlog.usage;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tautlog.rig.Hookup;
import tautlog.rig.LoadedItem;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Curve;

/**
 * Sorts the rainflow cycles of one outing by what part of the line's working load limit they span. Of a rig with several winch's lines
 * each is taken to have borne all cycles: a cycle does not tell its hookup.
 */
final class RopeMeter {
    private final Curve curve;
    private final List<Line> lines;

    /** One of the winch's lines and what it bore. */
    private static final class Line {
        final String gear;
        /** What it may carry: the least over the hookups. */
        final double allowedNewtons;

        final long[] halfCycles = new long[RopeUse.EDGES.size() + 1];
        long nanocycles;

        Line(String gear, double allowedNewtons) {
            this.gear = gear;
            this.allowedNewtons = allowedNewtons;
        }
    }

    RopeMeter(Rig rig, Calibration calibration) {
        curve = calibration.curve();
        Map<String, Double> allowed = new TreeMap<>();
        for (Hookup hookup : rig.hookups()) {
            hookup.items().stream()
                    .filter(LoadedItem::isWinchLine)
                    .forEach(item -> allowed.merge(item.gear(), allowed(item), Math::min));
        }
        lines = allowed.entrySet().stream()
                .map(line -> new Line(line.getKey(), line.getValue()))
                .toList();
    }

    /** By the line's tension, which is what cycles are of. */
    private static double allowed(LoadedItem item) {
        BigDecimal tension = item.tensionAtAllowed();
        return tension.doubleValue();
    }

    /** As {@link tautlog.detect.FindingSink#cycle}. */
    void cycle(long rangeCounts, long twiceMeanCounts, int halves) {
        double range = curve.newtons((twiceMeanCounts + rangeCounts) / 2.0)
                - curve.newtons((twiceMeanCounts - rangeCounts) / 2.0);
        for (Line line : lines) {
            double share = range / line.allowedNewtons;
            line.halfCycles[RopeUse.classOf(share)] += halves;
            line.nanocycles = Math.addExact(line.nanocycles, RopeUse.nanocycles(share, halves));
        }
    }

    List<RopeUse> uses() {
        return uses(false);
    }

    /** Of an outing whose readings are gone. */
    List<RopeUse> usesWithoutReadings() {
        return uses(true);
    }

    private List<RopeUse> uses(boolean isAtLeast) {
        return lines.stream()
                .map(line -> new RopeUse(
                        line.gear, Arrays.stream(line.halfCycles).boxed().toList(), line.nanocycles, isAtLeast))
                .toList();
    }
}
