package tautlog.desk.use;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import tautlog.desk.analysis.Copies;
import tautlog.recording.LostOuting;
import tautlog.recording.Outing;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;
import tautlog.sample.OutingClock;

/**
 * What a file tells of itself without its readings being read.
 *
 * @param outings that can be read, in the file's order
 * @param lost those that cannot
 */
record FileHead(String winch, String recordingId, List<OutingHead> outings, List<LostOuting> lost) {
    FileHead {
        outings = List.copyOf(outings);
        lost = List.copyOf(lost);
    }

    /** @param outings as {@link Recording#outings} gave them */
    static FileHead read(Recording recording, List<Outing> outings) throws RecordingException {
        String id = recording.id();
        Map<Integer, String> fingerprints = recording.fingerprints();
        List<OutingHead> heads = new ArrayList<>();
        for (Outing outing : outings) {
            heads.add(head(id, fingerprints.getOrDefault(outing.index(), ""), outing));
        }
        return new FileHead(recording.winch(), id, heads, recording.lostOutings());
    }

    private static OutingHead head(String id, String fingerprint, Outing outing) {
        OutingClock clock =
                OutingClock.of(outing.clockFixes(), outing.start().instrument().tickHz());
        return new OutingHead(
                Copies.Identity.of(id, outing),
                fingerprint,
                UseCache.rigKey(outing.start().rigToml()),
                outing.samples(),
                outing.thinned(),
                clock.instant(outing.firstTick()),
                clock.instant(outing.lastTick()));
    }
}
