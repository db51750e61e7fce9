package tautlog.recording;

import java.util.List;
import java.util.OptionalInt;
import tautlog.detect.Finding;
import tautlog.detect.Second;

/** Some of what was said live of an outing, in the order in which it was said, with its places in time. */
public record Said(List<SaidSecond> seconds, List<SaidFinding> findings) {
    public Said {
        seconds = List.copyOf(seconds);
        findings = List.copyOf(findings);
    }

    /**
     * A second.
     *
     * @param tick of its first sample; where that cannot be read, what the nominal rate gives
     */
    public record SaidSecond(Second second, long tick) {}

    /**
     * A finding.
     *
     * @param id of its row: greater than that of every finding said before in this recording
     * @param startTick of its first sample, or as it says itself
     * @param lastTick of the last sample that it names, or as it says itself
     * @param startCount the count of its first sample less the zero's shift; empty when it cannot be read
     */
    public record SaidFinding(long id, Finding finding, long startTick, long lastTick, OptionalInt startCount) {}
}
