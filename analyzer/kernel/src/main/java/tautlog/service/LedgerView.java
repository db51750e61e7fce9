package tautlog.service;

import java.util.List;
import java.util.Set;

/** The entries of a ledger that concern one of several winches. */
public final class LedgerView {
    private final Ledger ledger;
    private final Set<String> winches;

    /** @param winches all that are looked at together */
    public LedgerView(Ledger ledger, Set<String> winches) {
        this.ledger = ledger;
        this.winches = Set.copyOf(winches);
    }

    /**
     * Entries of {@code winch}. One without a winch is of the only winch; where there are several it counts for each if it warns, for
     * none if it reassures.
     */
    public List<Entry> of(String winch) {
        return ledger.entries().stream()
                .filter(entry -> entry.winch()
                        .map(winch::equals)
                        .orElse(winches.size() == 1 || !entry.act().reassures()))
                .toList();
    }

    /** Entries that count for no winch because they do not say whose they are. */
    public List<Entry> ownerless() {
        return winches.size() == 1
                ? List.of()
                : ledger.entries().stream()
                        .filter(entry -> entry.winch().isEmpty() && entry.act().reassures())
                        .toList();
    }
}
