package tautlog.desk.hours;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import tautlog.desk.use.OutingUse;
import tautlog.service.Act;
import tautlog.service.Entry;

/** Picks what a ledger tells of work beside the recordings. */
public final class UnloggedWork {
    private final List<Act.Worked> worked = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();

    private UnloggedWork() {}

    /**
     * Work that began in the time asked for, of the winches that were recorded.
     *
     * @param entries of the ledger
     * @param from inclusive
     * @param to exclusive
     */
    public static UnloggedWork of(List<Entry> entries, List<OutingUse> uses, Instant from, Instant to) {
        Set<String> winches = uses.stream().map(use -> use.at().winch()).collect(Collectors.toSet());
        UnloggedWork unlogged = new UnloggedWork();
        for (Entry entry : entries) {
            if (entry.act() instanceof Act.Worked work
                    && !work.from().isBefore(from)
                    && work.from().isBefore(to)
                    && entry.winch().map(winches::contains).orElse(true)) {
                unlogged.worked.add(work);
                unlogged.noteOverlap(work, entry, uses);
            }
        }
        return unlogged;
    }

    private void noteOverlap(Act.Worked work, Entry entry, List<OutingUse> uses) {
        boolean overlaps = uses.stream()
                .filter(use -> entry.winch().map(use.at().winch()::equals).orElse(true))
                .anyMatch(use -> use.start().isPresent()
                        && use.end().isPresent()
                        && use.start().get().isBefore(work.to())
                        && use.end().get().isAfter(work.from()));
        if (overlaps) {
            notes.add(
                    "The ledger tells of unrecorded work from " + work.from() + " to " + work.to()
                            + ", and in that time something was recorded: both are added up. Correct the entry if that is wrong.");
        }
    }

    public Unlogged sum() {
        return Unlogged.of(worked);
    }

    public List<String> notes() {
        return List.copyOf(notes);
    }
}
