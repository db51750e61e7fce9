package tautlog.desk.analysis;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tautlog.desk.progress.Progress;
import tautlog.desk.progress.Steps;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;
import tautlog.recording.Verification;

/**
 * What the chains of all recordings are worth.
 *
 * @param found by file, in the order of their first outings
 */
record ChainCheck(Map<Path, Verification> found) {
    static ChainCheck of(List<Study> studies, Progress progress) throws RecordingException {
        Map<Path, Verification> found = new LinkedHashMap<>();
        List<Recording> recordings = studies.stream()
                .map(study -> study.member().recording())
                .distinct()
                .toList();
        Steps steps =
                Steps.of("files checked", recordings, one -> one.file().toFile().length(), progress);
        for (int i = 0; i < recordings.size(); i++) {
            found.put(recordings.get(i).file(), recordings.get(i).verify());
            steps.done(i);
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
