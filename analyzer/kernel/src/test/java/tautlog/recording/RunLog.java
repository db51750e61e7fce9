package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import tautlog.sample.HookupSource;
import tautlog.sample.Position;
import tautlog.sample.Tally;
import tautlog.sample.ZeroSource;

/** Writes down a replay by runs: each sample by itself, every other call as {@link EvidenceLog} does. */
final class RunLog implements RunSink {
    final List<String> samples = new ArrayList<>();
    final EvidenceLog log = new EvidenceLog();
    private long announced = Long.MIN_VALUE;

    @Override
    public void frame(long number, long tick, int flags, int n) {
        announced = number + n;
    }

    @Override
    public void run(SampleBlock block, int run) {
        int from = block.runFrom(run);
        long number = block.runNumber(run);
        assertTrue(number + block.runLength(run) <= announced, "a frame was not announced");
        int[] counts = block.counts(run);
        for (int i = 0; i < block.runLength(run); i++) {
            samples.add((number + i) + " f" + block.runFlags(run) + " " + counts[from + i]);
        }
    }

    @Override
    public void shaft(long tick, long pulses, long[] pulseTicks, int n) {
        log.shaft(tick, pulses, pulseTicks, n);
    }

    @Override
    public void input(long atNumber, long tick, int selector, int present, int state) {
        log.input(atNumber, tick, selector, present, state);
    }

    @Override
    public void hookup(long atNumber, String id, HookupSource by) {
        log.hookup(atNumber, id, by);
    }

    @Override
    public void mark(long atNumber, String note) {
        log.mark(atNumber, note);
    }

    @Override
    public void health(long tick, int supplyMillivolts, int temperatureDecidegrees, long lost) {
        log.health(tick, supplyMillivolts, temperatureDecidegrees, lost);
    }

    @Override
    public void clock(long tick, long utcMicros) {
        log.clock(tick, utcMicros);
    }

    @Override
    public void zero(long atNumber, int shiftCounts, ZeroSource by) {
        log.zero(atNumber, shiftCounts, by);
    }

    @Override
    public void position(Position position) {
        log.position(position);
    }

    @Override
    public void tally(Tally tally) {
        log.tally(tally);
    }

    @Override
    public void end() {
        log.end();
    }
}
