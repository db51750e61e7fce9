package tautlog.recording;

import java.util.ArrayList;
import java.util.List;
import tautlog.sample.Evidence;
import tautlog.sample.HookupSource;
import tautlog.sample.Tally;

/** Writes down each sample by itself: number, flags, count; nothing else. */
class CountLog implements Evidence {
    final List<String> samples = new ArrayList<>();

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        for (int i = 0; i < n; i++) {
            samples.add((number + i) + " f" + flags + " " + counts[from + i]);
        }
    }

    @Override
    public void shaft(long tick, long pulses, long[] pulseTicks, int n) {}

    @Override
    public void input(long atNumber, long tick, int selector, int present, int state) {}

    @Override
    public void hookup(long atNumber, String id, HookupSource by) {}

    @Override
    public void mark(long atNumber, String note) {}

    @Override
    public void health(long tick, int supplyMillivolts, int temperatureDecidegrees, long lost) {}

    @Override
    public void clock(long tick, long utcMicros) {}

    @Override
    public void tally(Tally tally) {}

    @Override
    public void end() {}
}
