package tautlog.desk.analysis;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;
import tautlog.recording.Verification;

/**
 * What the chains of all recordings are worth.
 *
 * @param found by file, in the order of their first outings
 */
record ChainCheck(Map<Path, Verification> found) {
    static ChainCheck of(List<Study> studies) throws RecordingException {
        Map<Path, Verification> found = new LinkedHashMap<>();
        for (Study study : studies) {
            Recording recording = study.member().recording();
            if (!found.containsKey(recording.file())) {
                found.put(recording.file(), recording.verify());
            }
        }
        return new ChainCheck(found);
    }

    /** Whether all of them hold; empty when there is no recording. */
    Optional<Boolean> intact() {
        return found.isEmpty()
                ? Optional.empty()
                : Optional.of(found.values().stream().allMatch(Verification::isIntact));
    }

    /** Of the latest; empty when there is no recording. */
    Optional<String> lastLink() {
        return found.values().stream().map(Verification::lastLink).reduce((one, later) -> later);
    }
}
