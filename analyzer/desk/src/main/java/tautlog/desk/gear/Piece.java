package tautlog.desk.gear;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import tautlog.rig.Band;
import tautlog.service.Entry;

/**
 * One of several identical pieces, or all those that nobody told apart.
 *
 * @param name that the crew gave it; empty for those without a name
 * @param count how many it stands for
 * @param open overloads that no inspection answers, in the order of time
 * @param reasons why it is out beside overloads, whole sentences
 * @param answeredBy the entry that put it into service last, new or after an inspection
 */
public record Piece(
        Optional<String> name,
        int count,
        Standing standing,
        List<GearLoad> open,
        List<String> reasons,
        Optional<Entry> answeredBy) {
    public Piece {
        open = List.copyOf(open);
        reasons = List.copyOf(reasons);
    }

    /** The worst of the open overloads that are sure; empty when there is none. */
    public Optional<Band> worst() {
        return open.stream()
                .filter(load -> !load.event().onlyMayBe())
                .map(load -> load.event().band())
                .max(Comparator.naturalOrder());
    }

    /** Since when it has been in service; empty when no entry says. */
    public Optional<Instant> since() {
        return answeredBy.map(Entry::at);
    }
}
