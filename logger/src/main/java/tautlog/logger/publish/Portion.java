package tautlog.logger.publish;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import tautlog.recording.SaidMark;

/**
 * What is delivered together, and where the cursor stands then.
 *
 * @param recording id
 * @param outing index
 */
record Portion(String recording, int outing, List<Item> items, SaidMark then) {
    Portion {
        items = List.copyOf(items);
    }

    /** When the oldest of the items was; empty when there are none. */
    Optional<Instant> oldest() {
        return items.stream()
                .map(Item::utcMicros)
                .min(Comparator.naturalOrder())
                .map(micros -> Instant.ofEpochMilli(micros / 1_000));
    }
}
