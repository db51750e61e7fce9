package tautlog.logger.recorder;

import java.util.Optional;
import tautlog.detect.Finding;
import tautlog.detect.Second;
import tautlog.fixtures.EvidenceLog;
import tautlog.recording.OutingStart;

/** Writes down every event as a line: what {@link EvidenceLog} does, and what is told beside the evidence. */
public final class WrittenEvents extends EvidenceLog implements LiveEvents {
    @Override
    public void begin(OutingStart start, Optional<Long> utcMicros) {
        lines.add("begin " + start + " " + utcMicros);
    }

    @Override
    public void finding(Finding finding) {
        lines.add("finding " + finding);
    }

    @Override
    public void second(Second second) {
        lines.add("second " + second);
    }
}
