package tautlog.desk.analysis;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;
import tautlog.recording.Verification;

/**
 * Whether the chains of all recordings hold, and the last link of the latest.
 *
 * @param intact empty when there is no recording
 * @param lastLink empty when there is no recording
 */
record ChainCheck(Optional<Boolean> intact, Optional<String> lastLink) {
    static ChainCheck of(List<Study> studies) throws RecordingException {
        Set<Recording> recordings = new LinkedHashSet<>();
        studies.forEach(study -> recordings.add(study.member().recording()));
        ChainCheck check = new ChainCheck(Optional.empty(), Optional.empty());
        for (Recording recording : recordings) {
            Verification found = recording.verify();
            boolean soFar = check.intact().orElse(true);
            check = new ChainCheck(Optional.of(soFar && found.isIntact()), Optional.of(found.lastLink()));
        }
        return check;
    }
}
