package tautlog.logger.instrument;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tautlog.logger.recorder.WrittenEvents;
import tautlog.logger.wire.OutingSink;
import tautlog.sample.Evidence;
import tautlog.sample.Instrument;

/** Keeps what a feed tells of its outing. */
public final class ToldOuting implements OutingSink {
    private final List<Instrument> begun = new ArrayList<>();
    private final List<String> calls = new ArrayList<>();
    private WrittenEvents evidence = new WrittenEvents();

    @Override
    public Evidence begin(Instrument instrument, long firstTick) {
        begun.add(instrument);
        calls.add("begin " + firstTick);
        evidence = new WrittenEvents();
        return evidence;
    }

    @Override
    public void firstSample(long tick) {
        calls.add("first " + tick);
    }

    @Override
    public void now(long tick) {
        // every reading says it
    }

    @Override
    public void selector(long atNumber, int position) {
        calls.add("selector " + position);
    }

    @Override
    public void ended(long lastTick) {
        calls.add("ended " + lastTick);
    }

    /** begin, first, ended with their ticks. */
    public List<String> calls() {
        return calls;
    }

    public List<String> evidence() {
        return evidence.lines();
    }

    public Optional<Instrument> instrument() {
        return begun.isEmpty() ? Optional.empty() : Optional.of(begun.get(begun.size() - 1));
    }

    /** The counts of the samples, in order. */
    public List<Integer> counts() {
        return evidence.lines().stream()
                .filter(line -> line.startsWith("tension "))
                .map(line -> Integer.valueOf(line.substring(line.indexOf('[') + 1, line.indexOf(']'))))
                .toList();
    }
}
