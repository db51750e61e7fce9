package tautlog.detect;

/**
 * Whether a pull is open, and nothing else of it: opens and closes as {@link PullDetector} does. Source: {@code FINDINGS.md},
 * Pull. A test compares the two.
 */
final class PullState {
    private final Thresholds thresholds;
    private int opening;
    private int quiet;
    private boolean open;
    private boolean hasClosed;

    PullState(Thresholds thresholds) {
        this.thresholds = thresholds;
    }

    void sample(int count) {
        if (count >= thresholds.pullFrom) {
            loaded();
        } else {
            opening = 0;
            if (open) {
                unloaded(count);
            }
        }
    }

    private void loaded() {
        quiet = 0;
        if (!open) {
            opening++;
            open = opening >= thresholds.pullFor;
        }
    }

    private void unloaded(int count) {
        quiet = count < thresholds.pullHalf ? quiet + 1 : 0;
        if (quiet >= thresholds.pullEndAfter) {
            open = false;
            hasClosed = true;
            quiet = 0;
        }
    }

    /** Samples are missing; {@code missing} of them. */
    void gap(long missing) {
        opening = 0;
        if (missing > thresholds.bridge) {
            open = false;
            quiet = 0;
        }
    }

    /** Open, or about to open. */
    boolean isLoaded() {
        return open || opening > 0;
    }

    /** True when a pull of the outing has ended by itself, not at a gap: the line was let go. */
    boolean hasClosed() {
        return hasClosed;
    }
}
