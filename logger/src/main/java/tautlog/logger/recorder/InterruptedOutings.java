package tautlog.logger.recorder;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tautlog.config.ConfigException;
import tautlog.detect.Detection;
import tautlog.detect.Finding;
import tautlog.detect.FindingSink;
import tautlog.detect.Second;
import tautlog.recording.Outing;
import tautlog.recording.OutingWriter;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;
import tautlog.recording.RecordingException.Scope;
import tautlog.recording.RecordingName;
import tautlog.recording.RecordingWriter;
import tautlog.rig.LineCalibration;
import tautlog.rig.Rig;
import tautlog.sample.ZeroShift;

/**
 * Finishes what a power cut interrupted: the outing's evidence goes through the detectors again, with the rig and the
 * calibration stored in it; what they find and nobody said yet is appended, and the outing is ended. Recordings that were not
 * given their day's name yet get it; the log of one that somebody read while it was closed is folded in first.
 */
public final class InterruptedOutings {
    private static final Logger LOG = LoggerFactory.getLogger(InterruptedOutings.class);

    private final RecordingFiles files;
    private Optional<Long> newestEnd = Optional.empty();

    public InterruptedOutings(RecordingFiles files) {
        this.files = files;
    }

    /**
     * Looks through all recordings of the winch; one that cannot be finished is left as it is, with a warning.
     *
     * @param next the file that the next outing will be put into
     * @return how many outings were finished
     * @throws RecordingException if {@code next} is there and cannot go on for a reason that another file would not mend
     */
    public int finishAll(Path next) throws RecordingException {
        int finished = 0;
        for (Path file : files.there()) {
            try {
                RecordingTimes times = RecordingTimes.of(file);
                newestEnd = later(newestEnd, times.ended());
                if (times.hasOpenOuting()) {
                    finished += finish(file);
                } else if (RecordingName.hasLog(file)) {
                    RecordingWriter.open(file, files.winch()).close(); // somebody read it while it was closed
                }
                files.named(file, times.began()); // also one whose closing was cut off before it had its name
            } catch (RecordingException unusable) {
                LOG.warn("left as it is: {}", unusable.getMessage());
            }
        }
        if (Files.exists(next)) {
            requireThatItCanGoOn(next);
        }
        return finished;
    }

    private void requireThatItCanGoOn(Path next) throws RecordingException {
        try {
            RecordingWriter.open(next, files.winch()).close();
        } catch (RecordingException unusable) {
            if (unusable.scope() == Scope.THIS_FILE) {
                return; // the day goes on in its next name, and DayFiles says so
            }
            throw new RecordingException(
                    unusable.getMessage()
                            + "\n  Today's recording cannot go on in this file, so nothing was started; the file is as it"
                            + " was. If that cannot be mended, move it out of the folder, keep it, and start again.",
                    unusable);
        }
    }

    private static Optional<Long> later(Optional<Long> one, Optional<Long> other) {
        return other.filter(end -> one.isEmpty() || end > one.get()).or(() -> one);
    }

    /** When the latest outing that {@link #finishAll} saw ended, microseconds since 1970; empty when none has a time. */
    public Optional<Long> newestEndMicros() {
        return newestEnd;
    }

    private int finish(Path file) throws RecordingException {
        int finished = 0;
        try (RecordingWriter writer = RecordingWriter.open(file, files.winch());
                Recording recording = Recording.open(file)) {
            for (Outing outing : writer.interrupted()) {
                int added = finish(writer, recording, outing);
                LOG.info(
                        "finished an outing that was cut off file={} outing={} samples={} findings_added={}",
                        file.getFileName(),
                        outing.index(),
                        outing.samples(),
                        added);
                finished++;
            }
        }
        return finished;
    }

    private static int finish(RecordingWriter writer, Recording recording, Outing outing) throws RecordingException {
        OutingWriter rest = writer.resume(outing);
        Missing missing = new Missing(recording, outing, rest);
        try {
            Rig rig =
                    Rig.parse("rig of outing " + outing.index(), outing.start().rigToml());
            Detection detection = new Detection(
                    outing.start().instrument(),
                    rig,
                    LineCalibration.of(outing.start().calibration().response(), rig),
                    missing);
            recording.replay(outing, new ZeroShift(outing.start().instrument(), detection));
            detection.end();
        } catch (ConfigException rigOfAnotherVersion) {
            LOG.warn("an outing that was cut off gets no findings: {}", rigOfAnotherVersion.getMessage());
        }
        rest.end();
        rest.commit();
        return missing.added;
    }

    /** Appends what was not said live. */
    private static final class Missing implements FindingSink {
        private final OutingWriter rest;
        private final Map<Finding, Integer> said = new HashMap<>();
        private final Set<Long> secondsSaid = new HashSet<>();
        private int added;

        Missing(Recording recording, Outing outing, OutingWriter rest) throws RecordingException {
            this.rest = rest;
            recording.findings(outing).forEach(finding -> said.merge(finding, 1, Integer::sum));
            recording.seconds(outing).forEach(second -> secondsSaid.add(second.index()));
        }

        @Override
        public void finding(Finding finding) {
            if (said.merge(finding, -1, Integer::sum) < 0) {
                rest.finding(finding);
                added++;
            }
        }

        @Override
        public void second(Second second) {
            if (secondsSaid.add(second.index())) {
                rest.second(second);
            }
        }

        @Override
        public void cycle(long rangeCounts, long twiceMeanCounts, int halves) {
            // counted at the desk
        }

        @Override
        public void shaftReading(long tick, double rpm) {
            // read again at the desk
        }
    }
}
