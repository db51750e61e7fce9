package tautlog.detect;

import tautlog.detect.Finding.Trouble;
import tautlog.detect.Finding.TroubleKind;

/** Finds jumps of more than one second between frames, whatever their flags. Source: {@code FINDINGS.md}, Sensor trouble. */
final class GapDetector {
    private final int oneSecond;
    private final FindingSink sink;
    private boolean began;
    private long last;

    GapDetector(Thresholds thresholds, FindingSink sink) {
        oneSecond = thresholds.oneSecond;
        this.sink = sink;
    }

    void frame(long number, int n) {
        if (began && number - last - 1 > oneSecond) {
            sink.finding(new Trouble(TroubleKind.GAP, last, number));
        }
        began = true;
        last = number + n - 1;
    }
}
