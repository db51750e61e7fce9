package tautlog.logger.publish;

import java.util.List;
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
}
