package tautlog.logger.recorder;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import tautlog.recording.Outing;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;

/**
 * When a recording was made, by the clock fixes that it holds, microseconds since 1970. Outings that had no clock say nothing; one
 * without samples is asked only when no other can be.
 *
 * @param began its first outing
 * @param ended its last outing
 * @param hasOpenOuting whether an outing was cut off
 */
record RecordingTimes(Optional<Long> began, Optional<Long> ended, boolean hasOpenOuting) {
    static RecordingTimes of(Path file) throws RecordingException {
        try (Recording recording = Recording.open(file)) {
            List<Outing> outings = recording.outings();
            List<Outing> sampled =
                    outings.stream().filter(outing -> outing.samples() > 0).toList();
            return new RecordingTimes(
                    began(sampled).or(() -> began(outings)),
                    ended(sampled),
                    outings.stream().anyMatch(outing -> !outing.closed()));
        }
    }

    private static Optional<Long> began(List<Outing> outings) {
        return outings.stream()
                .map(outing -> outing.utcMicros(outing.firstTick()))
                .filter(OptionalLong::isPresent)
                .map(OptionalLong::getAsLong)
                .findFirst();
    }

    private static Optional<Long> ended(List<Outing> outings) {
        return outings.stream()
                .map(outing -> outing.utcMicros(outing.lastTick()))
                .filter(OptionalLong::isPresent)
                .map(OptionalLong::getAsLong)
                .max(Long::compare);
    }
}
