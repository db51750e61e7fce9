package tautlog.desk.use;

import java.nio.file.Path;
import java.util.Optional;

/**
 * What an outing was used for, and from which rows that was read.
 *
 * @param fingerprint see {@link tautlog.recording.Recording#fingerprint}
 */
record ReadUse(String fingerprint, OutingUse use) {
    /** See {@link OutingUse#withFindingsOf}. */
    ReadUse withFindingsOf(ReadUse whole) {
        return new ReadUse(fingerprint, use.withFindingsOf(whole.use));
    }

    /** The use, of these rows as they lie in {@code file}; empty when they are not those that it was read from. */
    Optional<OutingUse> of(String otherFingerprint, Path file) {
        return fingerprint.equals(otherFingerprint) ? Optional.of(use.in(file.toString())) : Optional.empty();
    }
}
