package tautlog.desk.analysis;

import java.util.Optional;
import java.util.function.Consumer;
import tautlog.rig.Hookup;
import tautlog.rig.Rig;
import tautlog.sample.Evidence;
import tautlog.sample.HookupSource;
import tautlog.sample.QuietEvidence;

/** Which hookup was on from when, worked out from what was told of hookups alone: as a report does, without its readings. */
public final class HookupTelling {
    private HookupTelling() {}

    /**
     * The turns under {@code rig}.
     *
     * @param hookup id of the hookup that is taken to be on all the time; one that the rig does not have is left out of account
     * @param firstNumber of the outing's first sample
     * @param telling tells what was said of hookup and selector, in order
     */
    public static HookupTrack of(Rig rig, Optional<String> hookup, long firstNumber, Consumer<Evidence> telling) {
        HookupTrack track = new HookupTrack(rig);
        Optional<Hookup> forced = hookup.flatMap(rig::hookup);
        HookupChoice choice = new HookupChoice(rig, forced, new QuietEvidence() {
            @Override
            public void hookup(long atNumber, String id, HookupSource by) {
                track.turn(atNumber, id, by);
            }
        });
        telling.accept(choice);
        choice.tension(firstNumber, 0, 0, new int[1], 0, 1);
        return track;
    }
}
