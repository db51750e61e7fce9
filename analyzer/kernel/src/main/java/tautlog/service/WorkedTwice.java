package tautlog.service;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;

/**
 * Two entries of unrecorded work that may be of the same winch and tell of the same time. Both are added up: that is right only when the
 * winch worked for both within that time.
 *
 * @param one began no later than {@code other}
 */
public record WorkedTwice(Entry one, Entry other) {
    /**
     * All such pairs, in the order of time.
     *
     * @param winches that were recorded; entries of others count for nothing
     */
    public static List<WorkedTwice> in(Ledger ledger, Set<String> winches) {
        List<Entry> worked = ledger.entries().stream()
                .filter(entry -> entry.act() instanceof Act.Worked)
                .filter(entry -> entry.winch().map(winches::contains).orElse(true))
                .sorted(Comparator.comparing((Entry entry) -> span(entry).from())
                        .thenComparing(Entry::id))
                .toList();
        List<WorkedTwice> twice = new ArrayList<>();
        for (int i = 0; i < worked.size(); i++) {
            Entry one = worked.get(i);
            worked.stream()
                    .skip(i + 1L)
                    .takeWhile(other -> span(other).from().isBefore(span(one).to()))
                    .filter(other -> mayBeOfOneWinch(one, other))
                    .forEach(other -> twice.add(new WorkedTwice(one, other)));
        }
        return twice;
    }

    private static Act.Worked span(Entry entry) {
        return (Act.Worked) entry.act();
    }

    /** An entry that names no winch may be of any. */
    private static boolean mayBeOfOneWinch(Entry one, Entry other) {
        return one.winch().isEmpty() || other.winch().isEmpty() || one.winch().equals(other.winch());
    }
}
