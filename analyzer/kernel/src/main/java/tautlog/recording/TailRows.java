package tautlog.recording;

import java.sql.SQLException;
import java.util.Map;
import java.util.TreeMap;

/**
 * What the tail rows of an outing hold, put together.
 *
 * @param span empty when there are none
 * @param damaged why, by row
 */
record TailRows(Span span, Map<Long, String> damaged) {
    /**
     * Rows that were damaged when their outing was finished, and set aside: their span is stored as −1 − span.
     *
     * @param span of the first of them; nothing is known of events from it on until the next naming
     * @param damaged why, by row
     */
    record Aside(int span, Map<Long, String> damaged) {
        /** What is stored in place of a span. */
        static final String STORED = "-1 - span";

        static Aside read(Rows rows, int outing, SpanCodec codec) throws SQLException {
            int[] first = {Integer.MAX_VALUE};
            Map<Long, String> damaged = new TreeMap<>();
            rows.tails(outing, (numbers, blocks) -> {
                if (numbers[1] < 0) {
                    int span = (int) (-1 - numbers[1]);
                    first[0] = Math.min(first[0], span);
                    append(numbers[0], blocks, codec, new Span(outing, span), damaged);
                    damaged.putIfAbsent(numbers[0], "it was set aside");
                }
            });
            return new Aside(first[0], damaged);
        }
    }

    static TailRows read(Rows rows, int outing, SpanCodec codec) throws SQLException {
        Span[] span = {new Span(outing, 0)};
        Map<Long, String> damaged = new TreeMap<>();
        rows.tails(outing, (numbers, blocks) -> {
            if (numbers[1] >= 0) {
                if (span[0].isEmpty()) {
                    span[0] = new Span(outing, (int) numbers[1]);
                }
                append(numbers[0], blocks, codec, span[0], damaged);
            }
        });
        return new TailRows(span[0], damaged);
    }

    static void append(long id, byte[] blocks, SpanCodec codec, Span span, Map<Long, String> damaged) {
        try {
            for (int at = 0; at < blocks.length; ) {
                Block block = Block.read(blocks, at);
                codec.append(block, span);
                at += block.size();
            }
        } catch (DamagedBlockException e) {
            damaged.put(id, String.valueOf(e.getMessage()));
        }
    }
}
