package tautlog.desk.analysis;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import tautlog.recording.Outing;
import tautlog.sample.Instrument;

/**
 * Keeps each outing once, however often it was copied: of copies the longest, of equals one whose readings were not thinned.
 *
 * <p>Two outings are the same when instrument, boot, first sample and tick are the same, and the first look at the clock too or
 * recording and place in it. A copy taken before the clock was set knows no look at it.
 */
public final class Copies<T extends Copies.Candidate> {
    private final Consumer<String> notes;
    private final List<T> kept = new ArrayList<>();
    private final Map<Object, Integer> places = new HashMap<>();

    /** @param notes takes a sentence for each copy that does not count */
    public Copies(Consumer<String> notes) {
        this.notes = notes;
    }

    /** An outing that may have been copied. */
    public interface Candidate {
        Path file();

        /** 0 for the file's first. */
        int index();

        long samples();

        boolean thinned();

        Identity identity();
    }

    /**
     * What makes an outing the same as another.
     *
     * @param firstFixMicros {@link Long#MIN_VALUE} when the clock was never known
     */
    public record Identity(
            String recordingId,
            int index,
            String instrument,
            long boot,
            long firstNumber,
            long firstTick,
            long firstFixMicros) {
        public static Identity of(String recordingId, Outing outing) {
            Instrument instrument = outing.start().instrument();
            long fix = outing.clockFixes().isEmpty()
                    ? Long.MIN_VALUE
                    : outing.clockFixes().get(0).utcMicros();
            return new Identity(
                    recordingId,
                    outing.index(),
                    instrument.id(),
                    instrument.boot(),
                    outing.firstNumber(),
                    outing.firstTick(),
                    fix);
        }

        /** Any one of them in common makes two outings the same. */
        List<Identity> signs() {
            return List.of(
                    new Identity("", 0, instrument, boot, firstNumber, firstTick, firstFixMicros),
                    new Identity(recordingId, index, instrument, boot, firstNumber, firstTick, Long.MIN_VALUE));
        }
    }

    public void add(T candidate) {
        List<Identity> signs = candidate.identity().signs();
        int place = signs.stream()
                .filter(places::containsKey)
                .mapToInt(places::get)
                .findFirst()
                .orElse(kept.size());
        signs.forEach(sign -> places.putIfAbsent(sign, place));
        if (place == kept.size()) {
            kept.add(candidate);
            return;
        }
        T before = kept.get(place);
        notes.accept(note(candidate, before));
        if (isBetter(candidate, before)) {
            kept.set(place, candidate);
        }
    }

    /** Those that count, in the order in which the first of their copies came. */
    public List<T> kept() {
        return List.copyOf(kept);
    }

    private static boolean isBetter(Candidate one, Candidate before) {
        return one.samples() > before.samples()
                || (one.samples() == before.samples() && before.thinned() && !one.thinned());
    }

    private static String note(Candidate one, Candidate other) {
        long more = one.samples() - other.samples();
        if (more == 0) {
            return place(one, other) + " is the same as " + lowerFirst(place(other, one)) + ": counted once.";
        }
        Candidate longer = more > 0 ? one : other;
        Candidate shorter = more > 0 ? other : one;
        return place(shorter, longer) + " is the beginning of " + lowerFirst(place(longer, shorter))
                + ", copied while it went on: counted once, the longer one was used.";
    }

    /** Names the folder too, where the file's name alone does not tell it from the other. */
    private static String place(Candidate one, Candidate other) {
        boolean alike = History.name(one.file()).equals(History.name(other.file()));
        return "Outing " + (one.index() + 1) + " of " + (alike ? one.file() : History.name(one.file()));
    }

    private static String lowerFirst(String sentence) {
        return Character.toLowerCase(sentence.charAt(0)) + sentence.substring(1);
    }
}
