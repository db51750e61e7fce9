package tautlog.logger.recorder;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import tautlog.detect.Finding;
import tautlog.detect.Second;
import tautlog.recording.OutingStart;
import tautlog.sample.HookupSource;
import tautlog.sample.Position;
import tautlog.sample.Tally;
import tautlog.sample.ZeroSource;

/** Writes down every event as a line. */
public final class WrittenEvents implements LiveEvents {
    private final List<String> lines = new ArrayList<>();

    public List<String> lines() {
        return lines;
    }

    @Override
    public void begin(OutingStart start, Optional<Long> utcMicros) {
        lines.add("begin " + start + " " + utcMicros);
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        lines.add("tension " + number + " " + tick + " " + flags + " "
                + Arrays.toString(Arrays.copyOfRange(counts, from, from + n)));
    }

    @Override
    public void shaft(long tick, long pulses, long[] pulseTicks, int n) {
        lines.add("shaft " + tick + " " + pulses + " " + Arrays.toString(Arrays.copyOf(pulseTicks, n)));
    }

    @Override
    public void input(long atNumber, long tick, int selector, int present, int state) {
        lines.add("input " + atNumber + " " + tick + " " + selector + " " + present + " " + state);
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
        lines.add("health " + tick + " " + supplyMillivolts + " " + temperatureDecidegrees + " " + lost);
    }

    @Override
    public void clock(long tick, long utcMicros) {
        lines.add("clock " + tick + " " + utcMicros);
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

    @Override
    public void finding(Finding finding) {
        lines.add("finding " + finding);
    }

    @Override
    public void second(Second second) {
        lines.add("second " + second);
    }
}
