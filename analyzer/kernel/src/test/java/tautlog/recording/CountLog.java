package tautlog.recording;

import java.util.ArrayList;
import java.util.List;
import tautlog.sample.QuietEvidence;

/** Writes down each sample by itself: number, flags, count; nothing else. */
class CountLog extends QuietEvidence {
    final List<String> samples = new ArrayList<>();

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        for (int i = 0; i < n; i++) {
            samples.add((number + i) + " f" + flags + " " + counts[from + i]);
        }
    }
}
