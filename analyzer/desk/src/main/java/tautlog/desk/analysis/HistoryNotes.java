package tautlog.desk.analysis;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** What a reader must know of how outings were put together, in sentences. */
public final class HistoryNotes {
    private HistoryNotes() {}

    public static String noOuting(Path file) {
        return History.name(file) + " holds no outing that can be read: run tautlog verify on it.";
    }

    /** @param index 0 for the file's first outing */
    public static String noReadings(Path file, int index) {
        return "Outing " + (index + 1) + " of " + History.name(file) + " holds no readings.";
    }

    /** Empty for one winch. */
    public static Optional<String> winches(List<String> winches) {
        return winches.size() < 2
                ? Optional.empty()
                : Optional.of("Recordings of " + winches.size() + " winches are added up here: "
                        + String.join(", ", winches) + ".");
    }

    /** @param what the damaged block, or the one that others are missing before, as {@link tautlog.recording.Damage#summary} */
    public static String damaged(Path file, String what) {
        return "DAMAGED: " + History.name(file) + ", " + what
                + ". What is damaged or missing is a gap here; run tautlog verify.";
    }

    /** {@code outing 1 of day.tautlog}; {@code index} 0 for the file's first. */
    public static String outing(Path file, int index) {
        return "outing " + (index + 1) + " of " + History.name(file);
    }

    /**
     * Empty when none is thinned.
     *
     * @param gone each as {@link #outing}
     */
    public static Optional<String> thinned(List<String> gone, int outings) {
        if (gone.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of("THINNED: the logger took the raw readings of " + gone.size() + " of " + outings
                + " outings out because its disk was nearly full, as its owner allowed; nothing but pulls had been found in"
                + " them: " + String.join(", ", gone)
                + ". Their pulls, and hours and bands of pulls, are what the logger said on the day and"
                + " cannot be worked out again; their intervals, the joint's hours and whether slack proved their zero are"
                + " not known. The shaft's hours come from its pulses, which are all there.");
    }

    /** Empty when none was cut. */
    public static Optional<String> powerCuts(long cut, int outings) {
        return cut == 0
                ? Optional.empty()
                : Optional.of(
                        cut + " of " + outings + " outings ended with the power (the normal end on a winch) or still"
                                + " go on: up to 1 s at their end may be missing.");
    }
}
