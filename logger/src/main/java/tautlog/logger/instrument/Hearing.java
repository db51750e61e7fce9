package tautlog.logger.instrument;

import java.util.Map;
import tautlog.logger.wire.LineCounts;
import tautlog.logger.wire.LineCounts.OutingState;
import tautlog.sample.Tally;

/**
 * Judges once a second what the line brings. A state that is no good is told after two looks in a row, a good one at once.
 * One thread looks, any asks.
 */
public final class Hearing {
    /** What the line brings. */
    public enum State {
        NOTHING("nothing comes; check its power, the cable and [instrument] port"),
        NOT_UNDERSTOOD("what comes is not understood; check [instrument] kind, baud and the cable"),
        NO_HELLO("frames come, but no HELLO that says which instrument it is: nothing can be recorded"),
        TWO_INSTRUMENTS("two instruments speak on this line: nothing is recorded until one of them is taken off"),
        SAME_ID(
                "the instrument at the [shaft] port has the same id as the one at the [instrument] port: its shaft is left out."
                        + " Give one of them another id"),
        UNDERSTOOD("understood");

        private final String words;

        State(String words) {
            this.words = words;
        }

        /** For a person, without a full stop. */
        public String words() {
            return words;
        }
    }

    /** By which {@link Tally#rejected} tells a shaft that was left out. */
    public static final String SHAFT_SAME_ID = "SHAFT_SAME_ID";

    private Tally before = Tally.NONE;
    private State last = State.UNDERSTOOD;
    private volatile State told = State.NOTHING;

    /**
     * Looks.
     *
     * @param bytes that came since the last look
     * @param hearsSamples whether a sample came within the last second
     * @return what is told now
     */
    public State look(long bytes, LineCounts counts, boolean hearsSamples) {
        State now = judged(bytes, counts, hearsSamples);
        before = counts.tally();
        if (now == State.UNDERSTOOD || now == last) {
            told = now;
        }
        last = now;
        return told;
    }

    private State judged(long bytes, LineCounts counts, boolean hearsSamples) {
        Tally tally = counts.tally();
        if (counts.outing() == OutingState.TWO_INSTRUMENTS) {
            return State.TWO_INSTRUMENTS;
        }
        if (grew(before.rejected(), tally.rejected())) {
            return State.SAME_ID;
        }
        if (hearsSamples) {
            return State.UNDERSTOOD;
        }
        if (bytes == 0) {
            return State.NOTHING;
        }
        if (counts.outing() == OutingState.NONE) {
            return tally.heldFrames() > before.heldFrames() ? State.NO_HELLO : State.NOT_UNDERSTOOD;
        }
        return tally.rejectedFrames() > before.rejectedFrames() ? State.NOT_UNDERSTOOD : State.UNDERSTOOD;
    }

    private static boolean grew(Map<String, Long> before, Map<String, Long> now) {
        return now.getOrDefault(SHAFT_SAME_ID, 0L) > before.getOrDefault(SHAFT_SAME_ID, 0L);
    }

    /** What was told last; any thread. */
    public State state() {
        return told;
    }
}
