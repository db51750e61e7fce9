package tautlog.recording;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import tautlog.detect.Finding;
import tautlog.detect.Second;

/**
 * The outings whose readings may be taken out: over, intact, recorded by the logger itself, and nothing was said of them but pulls.
 *
 * <p>That nothing was said counts only when everything was looked at: the seconds made live must hold each sample, none of
 * them with a flag. So a gap, an open bridge, a damaged row, a logger that could not read its rig all keep the readings.
 */
final class ThinnableOutings {
    private final Recording recording;

    ThinnableOutings(Recording recording) {
        this.recording = recording;
    }

    /**
     * Oldest first; none while an outing of the file is not over, or when the file's own structure is damaged.
     *
     * @param verified what {@link Recording#verify} found
     */
    List<Outing> list(Verification verified) throws RecordingException {
        Set<Integer> damaged = new HashSet<>();
        verified.damages().forEach(damage -> damaged.add(damage.outing()));
        List<Outing> thinnable = new ArrayList<>();
        if (damaged.contains(-1)
                || !verified.lost().isEmpty()
                || !verified.outings().stream().allMatch(Outing::closed)) {
            return thinnable;
        }
        for (Outing outing : verified.outings()) {
            if (!damaged.contains(outing.index()) && isThinnable(outing)) {
                thinnable.add(outing);
            }
        }
        return thinnable;
    }

    private boolean isThinnable(Outing outing) throws RecordingException {
        return !outing.thinned()
                && outing.samples() > 0
                && outing.samples() == outing.lastNumber() - outing.firstNumber() + 1
                && outing.start().source() == OutingStart.Source.INSTRUMENT
                && recording.findings(outing).stream().allMatch(Finding.Pull.class::isInstance)
                && isSeenWhole(outing);
    }

    private boolean isSeenWhole(Outing outing) throws RecordingException {
        List<Second> seconds = recording.seconds(outing);
        boolean isPlain = seconds.stream().allMatch(second -> (second.flags() & ~Second.AT_MOST) == 0);
        return isPlain && seconds.stream().mapToLong(Second::samples).sum() == outing.samples();
    }
}
