package tautlog.logger.run;

/** How long to wait before a port is tried again: 0.1 s, then twice as long each time, 5 s at most. */
final class BackOff {
    private static final long LEAST_MILLIS = 100;
    private static final long GREATEST_MILLIS = 5_000;

    private long nextMillis = LEAST_MILLIS;

    void reset() {
        nextMillis = LEAST_MILLIS;
    }

    long nextMillis() {
        long millis = nextMillis;
        nextMillis = Math.min(GREATEST_MILLIS, 2 * millis);
        return millis;
    }
}
