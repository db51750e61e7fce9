package tautlog.desk.notes;

import java.time.Instant;
import java.util.Optional;

/**
 * A note.
 *
 * @param winch empty where somebody wrote it by hand and named none
 * @param at the moment it is about
 * @param about what was found there, {@code overload}; empty for a note about a time
 * @param by empty when nobody is named
 * @param written when; empty where it does not say
 */
public record Note(
        Optional<String> winch, Instant at, String about, String text, Optional<String> by, Optional<Instant> written) {
    /** As the evening view writes it. */
    public static Note of(String winch, Instant at, String about, String text, Instant written) {
        return new Note(Optional.of(winch), at, about, text, Optional.empty(), Optional.of(written));
    }
}
