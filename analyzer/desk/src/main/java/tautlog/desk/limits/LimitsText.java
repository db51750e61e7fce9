package tautlog.desk.limits;

import java.util.Optional;
import tautlog.desk.page.Ink;
import tautlog.desk.page.TextPage;
import tautlog.quantity.ForceUnit;
import tautlog.rig.Rig;

/** Sets the limits of a rig in plain words, 80 columns wide. */
public final class LimitsText {
    private final ForceUnit unit;
    private final Ink ink;

    public LimitsText(ForceUnit unit, Ink ink) {
        this.unit = unit;
        this.ink = ink;
    }

    /** In the rig's own unit, without colour: see {@link #show}. */
    public static String render(Rig rig, Optional<String> hookupId) {
        return new LimitsText(rig.units(), Ink.PLAIN).show(rig, hookupId);
    }

    /**
     * The page.
     *
     * @param hookupId the only hookup to show; empty for all
     * @throws IllegalArgumentException if the rig has no such hookup; the message names those it has
     */
    public String show(Rig rig, Optional<String> hookupId) {
        return TextPage.render(new LimitsPage(rig, unit).document(ChosenHookups.of(rig, hookupId)), ink);
    }
}
