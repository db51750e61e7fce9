package tautlog.desk.analysis;

import java.util.ArrayList;
import java.util.List;
import tautlog.recording.Outing;
import tautlog.recording.RecordingException;
import tautlog.sample.QuietEvidence;

/** Remembers the notes that people left, each at the tick of the first sample from its number on. */
public final class MarkTrack extends QuietEvidence {
    private final List<Long> numbers = new ArrayList<>();
    private final List<String> waiting = new ArrayList<>();
    private final List<MarkAt> marks = new ArrayList<>();
    private long lastTick;

    /** A note at {@code tick}. */
    public record MarkAt(long tick, String note) {}

    @Override
    public void mark(long atNumber, String note) {
        numbers.add(atNumber);
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

    /** All of them, in order, of an outing whose readings are gone: at the sample that each names. */
    List<MarkAt> marksOfThinned(History.Member member) throws RecordingException {
        Outing outing = member.outing();
        List<MarkAt> all = new ArrayList<>();
        for (int i = 0; i < numbers.size(); i++) {
            long number = Math.max(outing.firstNumber(), Math.min(outing.lastNumber(), numbers.get(i)));
            all.add(new MarkAt(member.recording().tickOf(outing, number), waiting.get(i)));
        }
        return all;
    }

    /** All of them, in order; one after the last sample stands at the last frame. */
    List<MarkAt> marks() {
        settle();
        return marks;
    }
}
