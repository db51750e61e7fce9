package tautlog.recording;

import java.sql.SQLException;

/**
 * Whether rows of evidence are missing between those of one outing, taken in order, and whether a naming of a hookup may have stood in
 * them. A span's events are its last row. One thread.
 */
final class MissingRows {
    /** What may be gone. */
    enum Gone {
        NOTHING,
        /** Samples and shaft frames only. */
        FRAMES,
        /** Events of the span before this row's, or of later ones. */
        EVENTS_FROM_BEFORE,
        /** Events behind the whole span before this row's. */
        EVENTS_FROM_HERE
    }

    private final Rows rows;
    private long last;
    private int span = -1;
    private boolean isSpanWhole;

    MissingRows(Rows rows) {
        this.rows = rows;
    }

    /** Row {@code last} of the outing was taken earlier; 0 when none was. Before the first row nothing is missed. */
    void goOnAfter(long last) {
        this.last = last;
    }

    /** The last row that was taken, 0 before the first. */
    long last() {
        return last;
    }

    /** What is missing between the row taken before and {@code row}. */
    Gone before(EvidenceRow row) throws SQLException {
        long unseen = row.seq() - last - 1;
        if (last <= 0 || unseen == 0 || rows.between(last, row.seq()) == unseen) {
            return Gone.NOTHING;
        }
        if (row.span() == span || (isSpanWhole && row.span() == span + 1)) {
            return Gone.FRAMES;
        }
        return isSpanWhole ? Gone.EVENTS_FROM_HERE : Gone.EVENTS_FROM_BEFORE;
    }

    void take(EvidenceRow row) {
        last = row.seq();
        span = row.span();
        isSpanWhole = row.is(Block.Kind.EVENTS);
    }
}
