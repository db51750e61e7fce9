package tautlog.logger.wire;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import tautlog.sample.Evidence;
import tautlog.sample.HookupSource;
import tautlog.sample.Instrument;
import tautlog.sample.Position;
import tautlog.sample.Tally;
import tautlog.sample.ZeroSource;

/** Writes down, one line each, everything that an assembler tells. */
final class ToldText implements OutingSink, Evidence {
    final List<String> lines = new ArrayList<>();
    Tally tally = Tally.NONE;

    /** The lines that begin with one of {@code words}. */
    List<String> only(String... words) {
        return lines.stream()
                .filter(line -> Arrays.stream(words).anyMatch(line::startsWith))
                .toList();
    }

    @Override
    public Evidence begin(Instrument instrument, long firstTick) {
        lines.add("begin boot " + instrument.boot() + " tick " + firstTick);
        return this;
    }

    @Override
    public void firstSample(long tick) {
        lines.add("first " + tick);
    }

    @Override
    public void now(long tick) {
        lines.add("now " + tick);
    }

    @Override
    public void ended(long lastTick) {
        lines.add("over " + lastTick);
    }

    @Override
    public void selector(long atNumber, int position) {
        lines.add("selector " + position + " at " + atNumber);
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        lines.add("tension " + number + " tick " + tick + " flags " + flags + " "
                + Arrays.toString(Arrays.copyOfRange(counts, from, from + n)));
    }

    @Override
    public void shaft(long tick, long pulses, long[] pulseTicks, int n) {
        lines.add("shaft " + tick + " pulses " + pulses + " " + Arrays.toString(Arrays.copyOf(pulseTicks, n)));
    }

    @Override
    public void input(long atNumber, long tick, int selector, int present, int state) {
        lines.add("input at " + atNumber + " tick " + tick + " selector " + selector + " present " + present + " state "
                + state);
    }

    @Override
    public void hookup(long atNumber, String id, HookupSource by) {
        lines.add("hookup " + id + " at " + atNumber);
    }

    @Override
    public void mark(long atNumber, String note) {
        lines.add("mark at " + atNumber + " \"" + note + "\"");
    }

    @Override
    public void health(long tick, int supplyMillivolts, int temperatureDecidegrees, long lost) {
        lines.add("health " + tick + " lost " + lost);
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
    public void tally(Tally sum) {
        tally = sum;
    }

    @Override
    public void end() {
        lines.add("end");
    }
}
