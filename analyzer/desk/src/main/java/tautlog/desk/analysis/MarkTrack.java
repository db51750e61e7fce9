package tautlog.desk.analysis;

import java.util.ArrayList;
import java.util.List;
import tautlog.sample.QuietEvidence;

/** Remembers the notes that people left, each at the tick of the first sample from its number on. */
public final class MarkTrack extends QuietEvidence {
    private final List<String> waiting = new ArrayList<>();
    private final List<MarkAt> marks = new ArrayList<>();
    private long lastTick;

    /** A note at {@code tick}. */
    public record MarkAt(long tick, String note) {}

    @Override
    public void mark(long atNumber, String note) {
        waiting.add(note);
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        lastTick = tick;
        settle();
    }

    private void settle() {
        waiting.forEach(note -> marks.add(new MarkAt(lastTick, note)));
        waiting.clear();
    }

    /** All of them, in order; one after the last sample stands at the last frame. */
    List<MarkAt> marks() {
        settle();
        return marks;
    }
}
