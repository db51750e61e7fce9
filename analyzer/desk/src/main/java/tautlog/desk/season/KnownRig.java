package tautlog.desk.season;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tautlog.rig.Rig;

/**
 * A rig that outings were recorded with, or the one given at the start.
 *
 * @param id a name for addresses
 * @param winch its name in the recordings, which the rig's own text may spell otherwise
 * @param from when the first outing with it began; empty without a clock and for the one given at the start
 * @param to when the last outing with it ended
 */
public record KnownRig(String id, Rig rig, String winch, Optional<Instant> from, Optional<Instant> to) {
    /** The id of the rig given at the start. */
    public static final String OTHER = "other";

    /** Those that can be read, the one of the newest outing first, the one given at the start last. */
    public static List<KnownRig> of(SeasonWatch watch, Trace trace) {
        Map<String, KnownRig> known = new LinkedHashMap<>();
        for (KnownOuting outing : watch.season().outings()) {
            trace.rig(outing, WhatIf.NOTHING)
                    .ifPresent(rig -> known.merge(id(outing), of(outing, rig), KnownRig::untilLater));
        }
        List<KnownRig> newestFirst = new ArrayList<>(known.values());
        Collections.reverse(newestFirst);
        watch.offer()
                .rig()
                .ifPresent(rig ->
                        newestFirst.add(new KnownRig(OTHER, rig, rig.winch(), Optional.empty(), Optional.empty())));
        return newestFirst;
    }

    private static KnownRig of(KnownOuting outing, Rig rig) {
        return new KnownRig(id(outing), rig, outing.winch(), outing.start(), outing.end());
    }

    private static String id(KnownOuting outing) {
        return Fingerprint.of(outing.winch(), outing.outing().start().rigToml()).substring(0, 12);
    }

    private static KnownRig untilLater(KnownRig before, KnownRig later) {
        return new KnownRig(
                before.id,
                before.rig,
                before.winch,
                before.from.isPresent() ? before.from : later.from,
                later.to.isPresent() ? later.to : before.to);
    }

    public boolean isOther() {
        return id.equals(OTHER);
    }
}
