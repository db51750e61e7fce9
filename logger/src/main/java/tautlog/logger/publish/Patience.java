package tautlog.logger.publish;

/**
 * How long publishers wait, in milliseconds. All chosen.
 *
 * @param poll least time between two looks into the recording
 * @param answer longest wait for a server's answer: a network that delays by half a minute is still used
 * @param backOff before the second try; doubles up to {@code greatestBackOff}, each ± 50 % so that winches do not come together
 * @param heartbeat between two announcements of the status
 * @param scan between two looks into the recordings folder
 */
public record Patience(long poll, long answer, long backOff, long greatestBackOff, long heartbeat, long scan) {
    public static final Patience USUAL = new Patience(1_000, 60_000, 1_000, 60_000, 60_000, 60_000);

    /** The usual one, hurried {@code times} times: for tests. */
    public static Patience hurried(double times) {
        return new Patience(
                part(USUAL.poll, times),
                part(USUAL.answer, times),
                part(USUAL.backOff, times),
                part(USUAL.greatestBackOff, times),
                part(USUAL.heartbeat, times),
                part(USUAL.scan, times));
    }

    private static long part(long millis, double times) {
        return Math.max(1, Math.round(millis / times));
    }
}
