package tautlog.detect;

import tautlog.detect.Finding.Trouble;
import tautlog.detect.Finding.TroubleKind;

/** Finds the times in which the instrument said that the bridge is open. Source: {@code FINDINGS.md}, Sensor trouble. */
final class OpenBridgeDetector {
    private final FindingSink sink;
    private boolean open;
    private long first;
    private long last;

    OpenBridgeDetector(FindingSink sink) {
        this.sink = sink;
    }

    void flagged(long number, int n) {
        if (!open) {
            open = true;
            first = number;
        }
        last = number + n - 1;
    }

    /** An unflagged sample came, or the outing is over. */
    void close() {
        if (open) {
            open = false;
            sink.finding(new Trouble(TroubleKind.OPEN_BRIDGE, first, last));
        }
    }
}
