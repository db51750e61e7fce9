package tautlog.recording;

import java.util.OptionalLong;

/**
 * An outing whose start cannot be read, without whose rig, calibration and instrument nothing of it can be told; or one of
 * which rows are missing.
 *
 * @param index 0 for the file's first
 * @param reason why it is lost
 * @param samples how many the file says it holds; empty when that cannot be told either
 */
public record LostOuting(int index, String reason, OptionalLong samples) {
    /** {@code about 120 samples}, or that their number is not known. */
    public String extent() {
        return samples.isPresent() ? "about " + samples.getAsLong() + " samples" : "nobody knows how many samples";
    }
}
