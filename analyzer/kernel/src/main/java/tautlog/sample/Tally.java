package tautlog.sample;

import java.util.Map;
import java.util.TreeMap;

/**
 * What was lost or refused on the way from the instrument, counted since the outing began.
 *
 * @param rejected frames by the name of the first test that they failed ({@code BAD_CRC}, …), sorted by name
 * @param lostFrames by the sequence number, rejected ones included
 * @param repeatedFrames dropped because their samples had been there already
 * @param heldFrames lost because no HELLO came in time
 */
public record Tally(Map<String, Long> rejected, long lostFrames, long repeatedFrames, long heldFrames) {
    public static final Tally NONE = new Tally(Map.of(), 0, 0, 0);

    public Tally {
        rejected = java.util.Collections.unmodifiableMap(new TreeMap<>(rejected));
    }

    public long rejectedFrames() {
        return rejected.values().stream().mapToLong(Long::longValue).sum();
    }
}
