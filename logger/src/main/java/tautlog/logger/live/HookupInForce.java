package tautlog.logger.live;

import java.util.Optional;
import tautlog.rig.Hookup;
import tautlog.rig.Rig;
import tautlog.sample.HookupSource;

/**
 * Which hookup is on: the last of the selector on the instrument and a mark, else the rig's default, else the one with the
 * lowest limit.
 *
 * <p>A selector speaks when it is turned, not by standing where it stands, so that a mark can overrule it. Turned to 0, or
 * to a position that no hookup has, it takes back what was said: the hookup is then only assumed. A mark outlives an
 * instrument's restart, the selector's word does not.
 */
final class HookupInForce {
    /** A hookup and who said it. */
    record Choice(Hookup hookup, HookupSource by) {}

    private final Rig rig;
    private Choice choice;

    HookupInForce(Rig rig) {
        this.rig = rig;
        choice = assumed();
    }

    Choice choice() {
        return choice;
    }

    /** Another outing begins; its selector has not spoken yet. */
    void outingBegins() {
        if (choice.by == HookupSource.SELECTOR) {
            choice = assumed();
        }
    }

    /** The selector was turned to {@code position}; false when no hookup of the rig has it. */
    boolean selector(int position) {
        Optional<Hookup> selected = position == 0 ? Optional.empty() : rig.bySelector(position);
        choice = selected.map(hookup -> new Choice(hookup, HookupSource.SELECTOR))
                .orElseGet(this::assumed);
        return position == 0 || selected.isPresent();
    }

    /** A person said that {@code hookup} is on. */
    void mark(Hookup hookup) {
        choice = new Choice(hookup, HookupSource.MARK);
    }

    private Choice assumed() {
        Hookup hookup = rig.assumed();
        return new Choice(hookup, hookup.isDefault() ? HookupSource.DEFAULT : HookupSource.LOWEST);
    }
}
