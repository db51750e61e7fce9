package tautlog.desk.analysis;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tautlog.rig.Hookup;
import tautlog.rig.Rig;
import tautlog.sample.Evidence;
import tautlog.sample.ForwardedEvidence;
import tautlog.sample.HookupSource;

/**
 * Passes everything on, with the hookups that this reading asks for: those of the day, or one for the whole outing.
 *
 * <p>Under another rig the id of the day counts when that rig has it, else the switch's position, else the hookup with
 * the lowest limit, assumed; so, too, where damage took the naming along, which makes no other reading of the day.
 */
final class HookupChoice extends ForwardedEvidence {
    private final Rig rig;
    private final Optional<Hookup> forced;
    private final Set<String> unknown = new LinkedHashSet<>();
    private int selector;
    private boolean begun;
    private boolean differs;
    private final List<LostNaming> lost = new ArrayList<>();
    private boolean isLost;
    private boolean goesOn;

    /** @param forced the hookup for the whole outing, of {@code rig}; empty: as on the day */
    HookupChoice(Rig rig, Optional<Hookup> forced, Evidence next) {
        super(next);
        this.rig = rig;
        this.forced = forced;
    }

    /** Ids of the day that the rig does not have. */
    Set<String> unknown() {
        return unknown;
    }

    /** True when at some time another hookup than the day's was used, or one that was only assumed on the day. */
    boolean differs() {
        return differs;
    }

    /** Where damage took the naming along, in the order of time; none where a hookup is asked for. */
    List<LostNaming> lost() {
        return List.copyOf(lost);
    }

    @Override
    public void hookup(long atNumber, String id, HookupSource by) {
        if (forced.isPresent()) {
            force(atNumber);
            differs |= by.isAssumed() || !forced.get().id().equals(id);
            return;
        }
        begun = true;
        isLost = id.equals(UNKNOWN_HOOKUP);
        if (rig.hookup(id).isPresent()) {
            super.hookup(atNumber, id, by);
            return;
        }
        if (!isLost) {
            unknown.add(id);
            differs = true;
        }
        Optional<Hookup> switched = by == HookupSource.SELECTOR ? rig.bySelector(selector) : Optional.empty();
        Hookup standIn = switched.orElseGet(rig::lowest);
        super.hookup(atNumber, standIn.id(), switched.isPresent() ? by : HookupSource.LOWEST);
    }

    private void force(long atNumber) {
        if (!begun && forced.isPresent()) {
            begun = true;
            super.hookup(atNumber, forced.get().id(), HookupSource.MARK);
        }
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        if (!begun) {
            differs |= forced.isPresent(); // nobody had said what was on
            force(number);
        }
        lose(tick);
        super.tension(number, tick, flags, counts, from, n);
    }

    private void lose(long tick) {
        if (isLost) {
            long from = goesOn ? lost.remove(lost.size() - 1).fromTick() : tick;
            lost.add(new LostNaming(from, tick, rig.lowest()));
        }
        goesOn = isLost;
    }

    @Override
    public void input(long atNumber, long tick, int position, int present, int state) {
        selector = position;
        super.input(atNumber, tick, position, present, state);
    }
}
