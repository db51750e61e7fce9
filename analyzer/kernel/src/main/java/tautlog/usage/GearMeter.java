package tautlog.usage;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import tautlog.detect.Finding;
import tautlog.rig.Band;
import tautlog.rig.Hookup;
import tautlog.rig.LineCalibration;
import tautlog.rig.LoadedItem;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;

/** Puts the findings of one outing, and the samples by share, onto every piece of gear that was in the hookup in force. */
final class GearMeter {
    private final Rig rig;
    private final Calibration calibration;
    private final int atLeastFrom;
    private final Map<String, GearUse> byGear = new TreeMap<>();
    private final Map<String, List<GearEvent>> undated = new TreeMap<>();
    /** Of hookups in which no gear stands twice: there the greatest pull tells of all. */
    private final Map<String, PullTally> tallies = new TreeMap<>();

    private final Map<String, Boolean> twice = new TreeMap<>();

    GearMeter(Instrument instrument, Rig rig, Calibration calibration) {
        this.rig = rig;
        this.calibration = calibration;
        atLeastFrom = LineCalibration.atLeastFrom(calibration, instrument, rig);
    }

    void finding(Finding finding) {
        if (finding instanceof Finding.Pull pull) {
            pull(pull);
        } else if (finding instanceof Finding.Shock shock) {
            each(shock.hookup(), shock.peak(), load -> load.with(0, 0, 1));
        } else if (finding instanceof Finding.Overload overload) {
            each(overload.hookup(), overload.peak(), load -> overload(load, overload));
        }
    }

    private void pull(Finding.Pull pull) {
        int assumed = pull.hookupIsAssumed() ? 1 : 0;
        if (hasGearTwice(pull.hookup())) {
            each(pull.hookup(), pull.shareCounts(), load -> load.with(1, assumed, 0));
        } else {
            tallies.computeIfAbsent(pull.hookup(), id -> new PullTally()).add(pull.shareCounts(), assumed);
        }
    }

    private boolean hasGearTwice(String hookup) {
        return twice.computeIfAbsent(hookup, id -> {
            List<LoadedItem> items = hookup(id).items();
            return items.stream().map(LoadedItem::gear).distinct().count() < items.size();
        });
    }

    /** The pulls under one hookup. */
    private static final class PullTally {
        private long pulls;
        private long assumedPulls;
        private int greatest = Integer.MIN_VALUE;

        void add(int count, int assumed) {
            pulls++;
            assumedPulls += assumed;
            greatest = Math.max(greatest, count);
        }
    }

    /** What to add for gear that carries a load. */
    private interface Addition {
        GearUse of(Load load);
    }

    private void each(String hookup, int count, Addition addition) {
        for (Load load : loads(hookup(hookup), count)) {
            add(addition.of(load));
        }
    }

    private Hookup hookup(String id) {
        return rig.hookup(id).orElseGet(rig::lowest);
    }

    private void add(GearUse use) {
        byGear.merge(use.gear(), use, GearUse::plus);
    }

    /** Gear that stands twice in a hookup counts once, where it carries most of what it may. */
    private List<Load> loads(Hookup hookup, int count) {
        BigDecimal tension = calibration.exactNewtons(count);
        Map<String, Load> loads = new LinkedHashMap<>();
        for (LoadedItem item : hookup.items()) {
            Load load =
                    new Load(hookup, item, tension, item.loadNewtons(tension).doubleValue(), count >= atLeastFrom);
            loads.merge(item.gear(), load, Load::heavier);
        }
        return List.copyOf(loads.values());
    }

    /**
     * What one piece of gear carries at a tension in the line.
     *
     * @param item where it carries most of what it may
     * @param mostNewtons the greatest load on it, at whichever of its places
     */
    private record Load(Hookup hookup, LoadedItem item, BigDecimal tension, double mostNewtons, boolean atLeast) {
        double newtons() {
            return item.loadNewtons(tension).doubleValue();
        }

        double share() {
            return item.share(tension).doubleValue();
        }

        Optional<Band> band() {
            return item.band(tension);
        }

        static Load heavier(Load one, Load other) {
            Load heavier = one.isAtLeastAsBad(other) ? one : other;
            double most = Math.max(one.mostNewtons, other.mostNewtons);
            return new Load(heavier.hookup, heavier.item, heavier.tension, most, heavier.atLeast);
        }

        /** By the band first: of two places the one with the lower share may be the one that is proof loaded. */
        private boolean isAtLeastAsBad(Load other) {
            int byBand = Boolean.compare(band().isPresent(), other.band().isPresent());
            if (band().isPresent() && other.band().isPresent()) {
                byBand = band().orElseThrow().compareTo(other.band().orElseThrow());
            }
            return byBand != 0 ? byBand > 0 : share() >= other.share();
        }

        GearUse with(long pulls, long assumedPulls, long shocks) {
            return use(pulls, assumedPulls, shocks, Map.of());
        }

        GearUse use(long pulls, long assumedPulls, long shocks, Map<Band, Long> overloads) {
            GearUse none = GearUse.none(item.gear());
            return new GearUse(
                    item.gear(),
                    pulls,
                    assumedPulls,
                    shocks,
                    overloads,
                    new Greatest(true, mostNewtons, atLeast),
                    new Greatest(true, share(), atLeast || item.allowedIsAtMost()),
                    item.allowedIsAtMost(),
                    TimeSum.ZERO,
                    none.above(),
                    false,
                    List.of());
        }
    }

    private GearUse overload(Load load, Finding.Overload overload) {
        Optional<Band> band = load.band();
        if (band.isPresent() || load.item().allowedIsAtMost()) {
            undated.computeIfAbsent(load.item().gear(), of -> new ArrayList<>()).add(event(load, overload));
        }
        return load.use(0, 0, 0, band.map(passed -> Map.of(passed, 1L)).orElse(Map.of()));
    }

    private static GearEvent event(Load load, Finding.Overload overload) {
        return new GearEvent(
                overload.startNumber(),
                false,
                0,
                load.hookup().id(),
                overload.hookupIsAssumed(),
                load.band().orElse(Band.PAST_WLL),
                load.band().isEmpty(),
                load.newtons(),
                load.item().allowedNewtons().doubleValue(),
                load.share(),
                load.hookup().limit().governing().equals(load.item().gear()),
                overload.atLeast() || load.item().allowedIsAtMost());
    }

    /** Everything, with the times of {@code shares}. */
    List<GearUse> uses(ShareMeter shares, SampleClock clock) {
        Map<String, GearUse> all = new TreeMap<>(dated(clock));
        for (ShareClasses classes : shares.all()) {
            if (classes.total() > 0) {
                for (Load load : loads(classes.hookup(), classes.greatest())) {
                    all.merge(load.item().gear(), timed(load, classes, shares), GearUse::plus);
                }
            }
        }
        return List.copyOf(all.values());
    }

    private static GearUse timed(Load load, ShareClasses classes, ShareMeter shares) {
        GearUse use = load.with(0, 0, 0);
        return new GearUse(
                use.gear(),
                0,
                0,
                0,
                use.overloads(),
                use.loadNewtons(),
                use.share(),
                use.shareIsAtLeast(),
                shares.time(classes.total()),
                classes.above(use.gear()).stream().map(shares::time).toList(),
                false,
                List.of());
    }

    /** Everything that findings tell. */
    List<GearUse> usesWithoutReadings(SampleClock clock) {
        Map<String, GearUse> all = new TreeMap<>();
        for (Hookup hookup : rig.hookups()) {
            hookup.items()
                    .forEach(item ->
                            all.put(item.gear(), GearUse.none(item.gear()).withTimesAtLeast()));
        }
        dated(clock).forEach((gear, use) -> all.merge(gear, use, GearUse::plus));
        return List.copyOf(all.values());
    }

    private Map<String, GearUse> dated(SampleClock clock) {
        Map<String, GearUse> all = new TreeMap<>(byGear);
        tallies.forEach((id, tally) -> loads(hookup(id), tally.greatest)
                .forEach(load ->
                        all.merge(load.item().gear(), load.with(tally.pulls, tally.assumedPulls, 0), GearUse::plus)));
        undated.forEach((gear, events) -> all.merge(
                gear,
                GearUse.none(gear)
                        .withEvents(events.stream()
                                .map(event -> dated(event, clock))
                                .toList()),
                GearUse::plus));
        return all;
    }

    private static GearEvent dated(GearEvent event, SampleClock clock) {
        OptionalLong at = clock.utcMicros(event.number());
        return at.isPresent() ? event.at(at.getAsLong()) : event;
    }
}
