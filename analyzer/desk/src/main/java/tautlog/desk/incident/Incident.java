package tautlog.desk.incident;

import java.util.List;
import java.util.Optional;
import tautlog.desk.report.Moment;
import tautlog.desk.report.Report;

/**
 * One moment, and all that the recordings tell of it. Facts only: words are in {@link IncidentPage}, keys in {@link IncidentJson}.
 *
 * @param report what was found in the window; its trust, notes and what was left out are those of all recordings given
 * @param notes that people kept beside the recordings and that lie in the window
 * @param outing what is known of the outing under way then, or of one that ended or began within the window; empty when there is none
 */
public record Incident(Window window, Found found, Report report, SavedNotes notes, Optional<OutingFacts> outing) {
    /** Whether there is anything at the moment asked for. */
    public enum State {
        /** A reading before and after it without a gap between. */
        READINGS,
        /** An outing was under way, and its readings are missing there. */
        GAP,
        /** No outing was under way. */
        NO_OUTING
    }

    /**
     * What is there, and what is nearest.
     *
     * @param before the last reading before it; empty when there is none
     * @param after the first one after it
     * @param undated outings without a clock: nobody can say when they were
     */
    public record Found(State state, Optional<Near> before, Optional<Near> after, long undated) {}

    /**
     * A reading near the moment.
     *
     * @param outing from 1, as counted in the file
     */
    public record Near(Moment at, String file, int outing) {}

    /** Which hookup was on from when; {@code assumed} when nobody said so. */
    public record Turn(Moment at, String hookup, boolean assumed) {}

    /**
     * What the recording is worth as evidence.
     *
     * @param intact checksums, chain and structure fit
     * @param damages pieces that are not what was written
     * @param lostOutings that cannot be read
     * @param gaps in the sample numbers of the whole recording
     * @param lastLink the link that its chain ends with
     * @param kept links that were kept elsewhere and held against it; empty when none were given
     */
    public record Integrity(
            boolean intact, int damages, int lostOutings, int gaps, String lastLink, List<KeptLink> kept) {
        public Integrity {
            kept = List.copyOf(kept);
        }
    }

    /** A link that was kept elsewhere: where it is kept, what it is a link of, and what became of it, in a sentence. */
    public record KeptLink(String keptIn, String file, String link, boolean isContradicted, String sentence) {}
}
