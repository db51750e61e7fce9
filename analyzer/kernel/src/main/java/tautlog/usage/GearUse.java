package tautlog.usage;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import tautlog.rig.Band;

/**
 * What a piece of gear, or one of several identical ones, has carried. Exact, and the same in whatever order outings are added.
 *
 * @param gear its id; {@code cell} for the load cell
 * @param pulls in whose hookup it was; the hookup is that at the pull's greatest share
 * @param assumedPulls how many of these under a hookup that nobody had said was on
 * @param shocks in whose hookup it was
 * @param overloads in which its own load passed what it may carry, by the worst that it passed; without those that are 0
 * @param loadNewtons the greatest load on it
 * @param share the greatest load / what it may carry in that hookup
 * @param shareIsAtLeast what it may carry was only known as "at most" in some hookup it was in
 * @param seen time with a known tension while it was in the hookup in force
 * @param above time with a load above 0.25, 0.5, 0.75 and 1 of what it may carry: four times
 * @param timesAreAtLeast readings of some outings are gone: {@code seen} and {@code above} are only of the others
 * @param events its overloads, and those in which it may have been overloaded, in the order of time
 */
public record GearUse(
        String gear,
        long pulls,
        long assumedPulls,
        long shocks,
        Map<Band, Long> overloads,
        Greatest loadNewtons,
        Greatest share,
        boolean shareIsAtLeast,
        TimeSum seen,
        List<TimeSum> above,
        boolean timesAreAtLeast,
        List<GearEvent> events) {
    /** The shares that {@link #above} counts from, rising. */
    public static final List<String> SHARES = List.of("0.25", "0.5", "0.75", "1");

    /** @throws IllegalArgumentException if there is not one time for each share */
    public GearUse {
        if (above.size() != SHARES.size()) {
            throw new IllegalArgumentException("above must hold " + SHARES.size() + " times, held " + above.size());
        }
        TreeMap<Band, Long> kept = new TreeMap<>(overloads);
        kept.values().removeIf(times -> times == 0);
        overloads = Collections.unmodifiableMap(kept);
        above = List.copyOf(above);
        events = List.copyOf(events);
    }

    /** Gear that was not used. */
    public static GearUse none(String gear) {
        return new GearUse(
                gear,
                0,
                0,
                0,
                Map.of(),
                Greatest.NONE,
                Greatest.NONE,
                false,
                TimeSum.ZERO,
                List.of(TimeSum.ZERO, TimeSum.ZERO, TimeSum.ZERO, TimeSum.ZERO),
                false,
                List.of());
    }

    public long overloads(Band band) {
        return overloads.getOrDefault(band, 0L);
    }

    /** The same of gear whose readings are gone. */
    GearUse withTimesAtLeast() {
        return new GearUse(
                gear,
                pulls,
                assumedPulls,
                shocks,
                overloads,
                loadNewtons,
                share,
                shareIsAtLeast,
                seen,
                above,
                true,
                events);
    }

    /** Pulls, shocks and times of this; loads and overloads of {@code whole}, of which this is a part. */
    GearUse withLoadsOf(GearUse whole) {
        return new GearUse(
                gear,
                pulls,
                assumedPulls,
                shocks,
                whole.overloads,
                whole.loadNewtons,
                whole.share,
                whole.shareIsAtLeast,
                seen,
                above,
                timesAreAtLeast,
                whole.events);
    }

    /** The same with other events. */
    GearUse withEvents(List<GearEvent> others) {
        return new GearUse(
                gear,
                pulls,
                assumedPulls,
                shocks,
                overloads,
                loadNewtons,
                share,
                shareIsAtLeast,
                seen,
                above,
                timesAreAtLeast,
                others.stream().sorted(GearEvent.ORDER).toList());
    }

    /**
     * All together: as {@link #plus} of each to the next, but the events are sorted once.
     *
     * @throws IllegalArgumentException if one is of other gear
     */
    public static GearUse sum(String gear, List<GearUse> uses) {
        GearUse sum = none(gear);
        List<GearEvent> events = new ArrayList<>();
        for (GearUse use : uses) {
            sum = sum.plus(use.events.isEmpty() ? use : use.withEvents(List.of()));
            events.addAll(use.events);
        }
        return events.isEmpty() ? sum : sum.withEvents(events);
    }

    /** Both together. @throws IllegalArgumentException if they are of different gear */
    public GearUse plus(GearUse other) {
        if (!gear.equals(other.gear)) {
            throw new IllegalArgumentException("gear " + gear + " and " + other.gear + " are not the same");
        }
        return new GearUse(
                gear,
                pulls + other.pulls,
                assumedPulls + other.assumedPulls,
                shocks + other.shocks,
                sum(overloads, other.overloads),
                loadNewtons.or(other.loadNewtons),
                share.or(other.share),
                shareIsAtLeast || other.shareIsAtLeast,
                seen.plus(other.seen),
                times(above, other.above),
                timesAreAtLeast || other.timesAreAtLeast,
                inOrder(events, other.events));
    }

    private static List<GearEvent> inOrder(List<GearEvent> one, List<GearEvent> other) {
        return one.isEmpty() && other.isEmpty()
                ? one
                : Stream.concat(one.stream(), other.stream())
                        .sorted(GearEvent.ORDER)
                        .toList();
    }

    private static Map<Band, Long> sum(Map<Band, Long> one, Map<Band, Long> other) {
        TreeMap<Band, Long> sum = new TreeMap<>(one);
        other.forEach((band, times) -> sum.merge(band, times, Math::addExact));
        return sum;
    }

    /** Place by place; both of one length. */
    static List<Long> sums(List<Long> one, List<Long> other) {
        List<Long> sums = new ArrayList<>();
        for (int i = 0; i < one.size(); i++) {
            sums.add(Math.addExact(one.get(i), other.get(i)));
        }
        return sums;
    }

    private static List<TimeSum> times(List<TimeSum> one, List<TimeSum> other) {
        List<TimeSum> sums = new ArrayList<>();
        for (int i = 0; i < one.size(); i++) {
            sums.add(one.get(i).plus(other.get(i)));
        }
        return sums;
    }
}
