package tautlog.service;

import java.time.Instant;
import java.util.Optional;

/**
 * From when on a task's meters count.
 *
 * @param at empty for {@link Kind#NEVER}
 * @param entry the ledger's entry; empty when it is none
 */
public record Since(Kind kind, Optional<Instant> at, Optional<Entry> entry) {
    /** Why from then on. */
    public enum Kind {
        /** It was done then. */
        DONE,
        /** An inspection then stands for it. */
        INSPECTED,
        /** The gear was fitted then, by the ledger or the rig. */
        FITTED,
        /** Nobody entered that it was ever done: from the first recording. */
        NEVER
    }

    static final Since NEVER = new Since(Kind.NEVER, Optional.empty(), Optional.empty());

    /** Whether something at {@code moment} lies behind it. */
    boolean isBefore(Instant moment) {
        return at.map(moment::isAfter).orElse(true);
    }
}
