package tautlog.recording;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.function.BiConsumer;

/** Compares the thinned blocks of a file with what its rows say was thinned: a block must not vanish without a word. */
final class ThinnedBlocks {
    private final Map<Integer, Long> found = new TreeMap<>();
    private final Map<Integer, Event> said = new TreeMap<>();

    void found(Block block) {
        found.merge(block.outing(), 1L, Long::sum);
    }

    /** An event of {@code outing}, in the order of the chain. */
    void event(int outing, Event event) {
        if (event.type() == Event.Type.THINNED) {
            said.put(outing, event);
        }
    }

    List<Verification.Thinned> said() {
        List<Verification.Thinned> list = new ArrayList<>();
        said.forEach((outing, event) -> {
            long utcMicros = event.numbers()[0];
            list.add(new Verification.Thinned(
                    outing,
                    event.numbers()[1],
                    event.numbers()[2],
                    EvidenceRow.time(utcMicros == 0 ? OptionalLong.empty() : OptionalLong.of(utcMicros))));
        });
        return list;
    }

    /** @param damaged takes outing and reason of what the rows do not say, or say otherwise */
    void check(Connection connection, BiConsumer<Integer, String> damaged) throws SQLException {
        for (Map.Entry<Integer, Long> stubs : found.entrySet()) {
            if (!said.containsKey(stubs.getKey())) {
                damaged.accept(stubs.getKey(), stubs.getValue() + " of them hold no readings, and no row says why");
            }
        }
        for (Map.Entry<Integer, Event> row : said.entrySet()) {
            long blocks = row.getValue().numbers()[1];
            long stubs = found.getOrDefault(row.getKey(), 0L);
            if (stubs != blocks) {
                damaged.accept(
                        row.getKey(), "the row says that " + blocks + " of them were thinned, " + stubs + " are");
            }
            if (!row.getValue().texts().get(1).equals(ThinnedRest.digest(connection, row.getKey()))) {
                damaged.accept(
                        row.getKey(),
                        "findings, seconds or the index of the samples were changed after the outing was thinned");
            }
        }
    }
}
