package tautlog.logger.publish;

import tautlog.logger.recorder.Committed;

/** Wakes publishers when something was committed. Any thread. */
public final class CommitSignal implements Committed {
    private long commits;

    @Override
    public synchronized void committed() {
        commits++;
        notifyAll();
    }

    /** How often something was committed. */
    synchronized long commits() {
        return commits;
    }

    /** Waits until there were more commits than {@code seen}, at most {@code millis}; 0 waits for ever. */
    synchronized void awaitMore(long seen, long millis) throws InterruptedException {
        long end = System.nanoTime() + millis * 1_000_000;
        while (commits <= seen) {
            long left = millis == 0 ? 0 : (end - System.nanoTime()) / 1_000_000;
            if (millis != 0 && left <= 0) {
                return;
            }
            wait(left);
        }
    }
}
