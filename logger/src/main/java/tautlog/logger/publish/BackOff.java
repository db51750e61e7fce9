package tautlog.logger.publish;

import java.util.Random;

/** How long to wait before the next try: doubles from try to try, ± 50 %. */
final class BackOff {
    private final Patience patience;
    private final Random random;
    private long millis;

    BackOff(Patience patience, Random random) {
        this.patience = patience;
        this.random = random;
        reset();
    }

    void reset() {
        millis = patience.backOff();
    }

    /** @param asked what the server asked for, taken up to the greatest wait; 0 for nothing */
    long next(long asked) {
        long wait = Math.max(1, Math.round(millis * (0.5 + random.nextDouble())));
        millis = Math.min(patience.greatestBackOff(), 2 * millis);
        return Math.max(wait, Math.min(asked, patience.greatestBackOff()));
    }
}
