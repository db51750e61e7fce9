package tautlog.desk.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tautlog.rig.Hookup;
import tautlog.rig.Rig;
import tautlog.sample.HookupSource;

/** Remembers which hookup was on from which sample number, and who said so. */
public final class HookupTrack {
    private final Rig rig;
    private final List<Turn> turns = new ArrayList<>();
    private long lastNumber = Long.MIN_VALUE;

    HookupTrack(Rig rig) {
        this.rig = rig;
    }

    /** From sample {@code fromNumber} on, {@code hookup} is on; {@code assumed} when nobody said so. */
    public record Turn(long fromNumber, Hookup hookup, boolean assumed) {
        private Turn from(long number) {
            return new Turn(number, hookup, assumed);
        }
    }

    void turn(long atNumber, String id, HookupSource by) {
        Optional<Hookup> known = rig.hookup(id);
        if (!turns.isEmpty() && turns.get(turns.size() - 1).fromNumber() >= atNumber) {
            turns.remove(turns.size() - 1);
        }
        turns.add(new Turn(atNumber, known.orElseGet(rig::lowest), known.isEmpty() || by.isAssumed()));
    }

    /**
     * Samples {@code number} and the next ones are there: what was said of one that is missing before them holds from {@code number} on.
     *
     * @param n how many samples
     */
    void present(long number, int n) {
        if (!turns.isEmpty() && turns.get(turns.size() - 1).fromNumber() > lastNumber) {
            turns.replaceAll(turn -> isMissing(turn.fromNumber(), number) ? turn.from(number) : turn);
            for (int i = turns.size() - 2; i >= 0; i--) {
                if (turns.get(i).fromNumber() == turns.get(i + 1).fromNumber()) {
                    turns.remove(i);
                }
            }
        }
        lastNumber = number + n - 1;
    }

    private boolean isMissing(long number, long next) {
        return number > lastNumber && number < next;
    }

    /** In rising order; the first also holds before its number. */
    public List<Turn> turns() {
        return turns.isEmpty() ? List.of(new Turn(Long.MIN_VALUE, rig.assumed(), true)) : List.copyOf(turns);
    }

    /** What was on at sample {@code number}. */
    public Turn at(long number) {
        List<Turn> all = turns();
        Turn on = all.get(0);
        for (Turn turn : all) {
            if (turn.fromNumber() <= number) {
                on = turn;
            }
        }
        return on;
    }
}
