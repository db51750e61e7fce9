package tautlog.recording;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import tautlog.sample.Evidence;
import tautlog.sample.HookupSource;
import tautlog.sample.Position;
import tautlog.sample.Tally;
import tautlog.sample.ZeroSource;

/** Writes down every call as a line of text. */
final class EvidenceLog implements Evidence {
    final List<String> lines = new ArrayList<>();

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        lines.add("tension " + number + " @" + tick + " f" + flags + " "
                + Arrays.toString(Arrays.copyOfRange(counts, from, from + n)));
    }

    @Override
    public void shaft(long tick, long pulses, long[] pulseTicks, int n) {
        lines.add("shaft @" + tick + " " + pulses + " " + Arrays.toString(Arrays.copyOf(pulseTicks, n)));
    }

    @Override
    public void input(long atNumber, long tick, int selector, int present, int state) {
        lines.add("input " + atNumber + " @" + tick + " " + selector + " " + present + " " + state);
    }

    @Override
    public void hookup(long atNumber, String id, HookupSource by) {
        lines.add("hookup " + atNumber + " " + id + " " + by);
    }

    @Override
    public void mark(long atNumber, String note) {
        lines.add("mark " + atNumber + " " + note);
    }

    @Override
    public void health(long tick, int supplyMillivolts, int temperatureDecidegrees, long lost) {
        lines.add("health @" + tick + " " + supplyMillivolts + " " + temperatureDecidegrees + " " + lost);
    }

    @Override
    public void clock(long tick, long utcMicros) {
        lines.add("clock @" + tick + " " + utcMicros);
    }

    @Override
    public void zero(long atNumber, int shiftCounts, ZeroSource by) {
        lines.add("zero " + atNumber + " " + shiftCounts + " " + by);
    }

    @Override
    public void position(Position position) {
        lines.add("position " + position);
    }

    @Override
    public void tally(Tally tally) {
        lines.add("tally " + tally);
    }

    @Override
    public void end() {
        lines.add("end");
    }
}
