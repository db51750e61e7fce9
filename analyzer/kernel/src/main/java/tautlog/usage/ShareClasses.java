package tautlog.usage;

import static java.util.Objects.requireNonNull;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tautlog.rig.Hookup;
import tautlog.rig.LoadedItem;
import tautlog.sample.Calibration;
import tautlog.sample.CountBounds;

/** The samples of one hookup, by the classes between the counts at which an item of it passes a share of what it may carry. */
final class ShareClasses {
    private final Hookup hookup;
    /** For each gear the greatest counts at or below each share, in the order of {@link GearUse#SHARES}. */
    private final Map<String, int[]> bounds = new TreeMap<>();
    /** All of them, rising, each once. */
    private final int[] edges;
    /** {@code samples[k]}: above {@code edges[k − 1]}, at or below {@code edges[k]}. */
    private final long[] samples;

    private long total;
    private int greatest = Integer.MIN_VALUE;

    ShareClasses(Hookup hookup, Calibration calibration) {
        this.hookup = hookup;
        for (LoadedItem item : hookup.items()) {
            bounds.merge(item.gear(), bounds(item, calibration), ShareClasses::lower);
        }
        edges = bounds.values().stream()
                .flatMapToInt(Arrays::stream)
                .sorted()
                .distinct()
                .toArray();
        samples = new long[edges.length + 1];
    }

    private static int[] bounds(LoadedItem item, Calibration calibration) {
        int[] counts = new int[GearUse.SHARES.size()];
        for (int i = 0; i < counts.length; i++) {
            BigDecimal tension = item.tensionAtAllowed().multiply(ShareMeter.share(i));
            counts[i] = calibration.greatestCountsAtOrBelow(tension);
        }
        return counts;
    }

    /** Gear that stands twice in a hookup is above a share as soon as one of its places is. */
    private static int[] lower(int[] one, int[] other) {
        int[] lower = new int[one.length];
        Arrays.setAll(lower, i -> Math.min(one[i], other[i]));
        return lower;
    }

    Hookup hookup() {
        return hookup;
    }

    boolean takeWhole(int n, int least, int most) {
        int place = classOf(least);
        if (place < edges.length && most > edges[place]) {
            return false;
        }
        samples[place] += n;
        total += n;
        greatest = Math.max(greatest, most);
        return true;
    }

    /** @param least of the {@code n} counts, as {@code most} is the greatest */
    void take(int[] counts, int from, int n, int least, int most) {
        int place = classOf(least);
        int left = n;
        for (; place < edges.length && most > edges[place]; place++) {
            int above = CountBounds.above(counts, from, n, edges[place], least, most);
            samples[place] += left - above;
            left = above;
        }
        samples[place] += left;
        total += n;
        greatest = Math.max(greatest, most);
    }

    private int classOf(int count) {
        int place = 0;
        while (place < edges.length && count > edges[place]) {
            place++;
        }
        return place;
    }

    /** How many samples this hookup was in force for. */
    long total() {
        return total;
    }

    /** The greatest count; meaningless without a sample. */
    int greatest() {
        return greatest;
    }

    /** How many samples were above each share of {@code gear}, an item of this hookup. */
    List<Long> above(String gear) {
        int[] counts = requireNonNull(bounds.get(gear));
        return Arrays.stream(counts).mapToObj(this::above).toList();
    }

    private long above(int count) {
        int edge = Arrays.binarySearch(edges, count);
        long above = 0;
        for (int k = edge + 1; k < samples.length; k++) {
            above += samples[k];
        }
        return above;
    }
}
