package tautlog.recording;

/**
 * What was taken out of a recording.
 *
 * @param outings whose readings are gone
 * @param samples that they held
 * @param bytes by which the file became smaller
 */
public record Thinned(int outings, long samples, long bytes) {
    public static final Thinned NOTHING = new Thinned(0, 0, 0);
}
