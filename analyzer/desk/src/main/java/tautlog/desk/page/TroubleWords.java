package tautlog.desk.page;

import tautlog.detect.Finding.TroubleKind;

/** Sensor trouble in words. */
public final class TroubleWords {
    private TroubleWords() {}

    public static String of(TroubleKind kind) {
        return switch (kind) {
            case GAP -> "no readings for more than 1 s";
            case END_STOP -> "readings at the converter's end stop";
            case OPEN_BRIDGE -> "the bridge was open or shorted";
            case ZERO_DRIFT -> "the zero moved";
            case ZERO_UNPROVEN -> "no slack and quiet stretch proved the zero";
            case ONE_SAMPLE_PEAK -> "a peak of a single sample: interference, or a shock too fast for the instrument";
        };
    }
}
