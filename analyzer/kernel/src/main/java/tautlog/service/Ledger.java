package tautlog.service;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What the lines of a ledger say together. The order of lines means nothing; a line that stands there twice counts once. So ledgers of two
 * laptops are merged by putting one behind the other.
 *
 * <p>Where lines contradict each other, what {@link Act#reassures()} does not count, what warns does.
 *
 * @param entries that hold, in the order of their time
 * @param ids of all entries that could be read, holding or not
 * @param withdrawn by the id of each entry that was taken back, and of what it corrected, the id of the entry that did that
 * @param complaints in the order of lines
 */
public record Ledger(List<Entry> entries, Set<String> ids, Map<String, String> withdrawn, List<Complaint> complaints) {
    /** Of somebody who keeps none. */
    public static final Ledger EMPTY = new Ledger(List.of(), Set.of(), Map.of(), List.of());

    public Ledger {
        entries = List.copyOf(entries);
        ids = Set.copyOf(ids);
        withdrawn = Map.copyOf(withdrawn);
        complaints = List.copyOf(complaints);
    }

    /**
     * Reads a ledger; a line that cannot be read becomes a complaint.
     *
     * @param file the name that messages show; nothing is opened
     * @param zone of times that are written without one
     * @param now entries that reassure and lie after it do not count yet; one that withdraws takes back only what reassures
     */
    public static Ledger read(String file, byte[] bytes, ZoneId zone, Instant now) {
        LedgerReader reader = new LedgerReader(file, now);
        LedgerLines.in(bytes).forEach(part -> reader.take(part, zone));
        return reader.ledger();
    }

    /** The same, without entries of later than {@code end}. */
    public Ledger until(Instant end) {
        return new Ledger(
                entries.stream().filter(entry -> !entry.at().isAfter(end)).toList(), ids, withdrawn, complaints);
    }
}
