package tautlog.desk.analysis;

import java.util.Comparator;
import tautlog.rig.Hookup;
import tautlog.rig.Rig;

/** What an id that the rig does not know counts as: {@code analyzer/FINDINGS.md}, Hookup in force. */
public final class LowestHookup {
    private LowestHookup() {}

    /** The hookup with the lowest limit, of equals the first listed. */
    public static Hookup of(Rig rig) {
        return rig.hookups().stream()
                .min(Comparator.comparing(hookup -> hookup.limit().newtons()))
                .orElseThrow();
    }
}
