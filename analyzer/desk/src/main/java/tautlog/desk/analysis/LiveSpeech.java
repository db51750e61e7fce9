package tautlog.desk.analysis;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import tautlog.detect.Finding;
import tautlog.detect.Second;
import tautlog.recording.Outing;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;

/** What the logger said live, to be compared field by field with what its readings give now: shaft speeds to the tenth that is told. */
record LiveSpeech(List<Finding> findings, List<Second> seconds) {
    private static final Comparator<Finding> ANY_FIXED_ORDER =
            Comparator.comparingLong(Finding::startNumber).thenComparing(Finding::toString);

    LiveSpeech {
        findings = findings.stream().sorted(ANY_FIXED_ORDER).toList();
        seconds = seconds.stream().map(Second::inTenths).toList();
    }

    /** How the comparison of an outing ended. */
    enum Agreement {
        /** Nothing was said live: readings were imported. */
        SILENT,
        AGREES,
        DIFFERS,
        /** Another rig, calibration or hookup than the day's, readings lost to damage, or still being recorded. */
        NOT_COMPARED
    }

    static LiveSpeech of(Recording recording, Outing outing) throws RecordingException {
        return new LiveSpeech(recording.findings(outing), recording.seconds(outing));
    }

    /**
     * Compares this, read before the replay, with what the replay gave before it was ended.
     *
     * @param after the same read after the replay: a difference tells that the outing is still being recorded
     * @param comparable whether rig, calibration, hookups and readings of the replay were those of the day
     */
    Agreement with(LiveSpeech now, LiveSpeech after, boolean comparable) {
        if (findings.isEmpty() && seconds.isEmpty()) {
            return Agreement.SILENT;
        }
        if (!comparable || !equals(after)) {
            return Agreement.NOT_COMPARED;
        }
        return equals(now) ? Agreement.AGREES : Agreement.DIFFERS;
    }

    /** True or false when that is known of every outing that said something. */
    static Optional<Boolean> ofAll(List<Agreement> outings) {
        if (outings.contains(Agreement.DIFFERS)) {
            return Optional.of(false);
        }
        boolean known = outings.contains(Agreement.AGREES) && !outings.contains(Agreement.NOT_COMPARED);
        return known ? Optional.of(true) : Optional.empty();
    }
}
