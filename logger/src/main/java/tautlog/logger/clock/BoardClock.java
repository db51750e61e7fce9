package tautlog.logger.clock;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;

/**
 * Whether this board knows the time. A board without a battery for its clock starts in 1970, or where it was last turned off,
 * until somebody, or a network, sets it.
 *
 * <p>Its clock is believed when it stands at or after {@link #MADE} and one of these holds: it does not stand more than a minute before the
 * end of the newest recording; it was set since the logger started (it jumped by more than 2 s against the counter that never
 * goes back); the system says that it is synchronised. The last two keep a recording with a time in the future from making every
 * later clock unbelievable. A satellite receiver's time only has to stand after {@link #MADE}. Time is an argument. Reader thread
 * only, except {@link #state}, {@link #steps} and {@link #isOwnKnown}.
 */
public final class BoardClock {
    /** No clock that is right stands before this program's last release; a test holds it against the build's own date. */
    public static final Instant MADE = Instant.parse("2026-01-01T00:00:00Z");

    /** As {@link tautlog.sample.OutingClock} takes it: what jumps by less is not told from a look that was held up. */
    static final long STEP_MICROS = 2_000_000;

    /** Chosen: a fix can be late, a counter run wrong, by far less than this between two starts. */
    private static final long BEHIND_MICROS = 60_000_000;

    private static final long EARLIEST_MICROS = micros(MADE);

    /** What is thought of the time. */
    public enum State {
        /** Nobody looked yet. */
        UNASKED("the clock was not looked at yet"),
        /** Believed. */
        KNOWN("UTC known"),
        /** Before {@link #MADE}: nobody has set the clock. */
        UNSET(
                "UTC unknown: nobody has set the clock, and no satellite receiver tells the time. What is recorded is dated"
                        + " once one does while its outing lasts"),
        /** Before the end of the newest recording, and nobody has set it since the start. */
        BEHIND_RECORDINGS(
                "UTC unknown: the clock stands before the end of the newest recording, so it is not believed until it is"
                        + " set. If that recording's time is wrong, move it out of the folder and start again");

        private final String words;

        State(String words) {
            this.words = words;
        }

        /** For a person, without a full stop. */
        public String words() {
            return words;
        }
    }

    /** Whether the computer's own clock counts beside a satellite receiver's. */
    public enum Own {
        USED,
        LEFT_OUT
    }

    private final Own own;
    private final BooleanSupplier synchronised;
    private long newestMicros = EARLIEST_MICROS;
    private boolean looked;
    private long lookNanos;
    private long ownMicros;
    private boolean ownWasSet;
    private Optional<Long> utcMicros = Optional.empty();
    private final AtomicLong steps = new AtomicLong();
    private volatile State state = State.UNASKED;
    private volatile boolean ownIsKnown;

    /** @param synchronised whether the system says that its clock is set from outside; false when it does not know */
    public BoardClock(Own own, BooleanSupplier synchronised) {
        this.own = own;
        this.synchronised = synchronised;
    }

    /** A recording is there whose last outing ended then, microseconds since 1970; before the first {@link #look}. */
    public void newestRecording(long endMicros) {
        newestMicros = Math.max(newestMicros, endMicros);
    }

    /**
     * Looks at the clocks.
     *
     * @param nanos of a counter that never goes back, at the moment of the other two
     * @param hostMicros what the computer's clock says, microseconds since 1970
     * @param receiverMicros what the satellite receiver's time is now
     */
    public void look(long nanos, long hostMicros, Optional<Long> receiverMicros) {
        long sinceMicros = (nanos - lookNanos) / 1_000;
        ownWasSet |= looked && Math.abs(hostMicros - ownMicros - sinceMicros) > STEP_MICROS;
        Optional<Long> host = own == Own.USED ? believed(hostMicros) : Optional.empty();
        Optional<Long> now = host.or(() -> receiverMicros.filter(micros -> micros >= EARLIEST_MICROS));
        if (now.isPresent()
                && utcMicros.map(last -> isStep(last, sinceMicros, now.get())).orElse(looked)) {
            steps.incrementAndGet();
        }
        state = now.isPresent()
                ? State.KNOWN
                : hostMicros < EARLIEST_MICROS || own == Own.LEFT_OUT ? State.UNSET : State.BEHIND_RECORDINGS;
        ownIsKnown = host.isPresent();
        utcMicros = now;
        ownMicros = hostMicros;
        lookNanos = nanos;
        looked = true;
    }

    /** Whether the computer's own clock was believed at the last look. Any thread. */
    public boolean isOwnKnown() {
        return ownIsKnown;
    }

    private Optional<Long> believed(long hostMicros) {
        boolean isBelieved = hostMicros >= EARLIEST_MICROS
                && (hostMicros >= newestMicros - BEHIND_MICROS || ownWasSet || synchronised.getAsBoolean());
        return isBelieved ? Optional.of(hostMicros) : Optional.empty();
    }

    private static boolean isStep(long lastMicros, long sinceMicros, long micros) {
        return Math.abs(micros - lastMicros - sinceMicros) > STEP_MICROS;
    }

    private static long micros(Instant instant) {
        return ChronoUnit.MICROS.between(Instant.EPOCH, instant);
    }

    /** UTC at the last look, in microseconds since 1970; empty while no clock is believed. */
    public Optional<Long> utcMicros() {
        return utcMicros;
    }

    /** How often the time that is believed jumped, or came to be known, since the first look. */
    public long steps() {
        return steps.get();
    }

    /** Any thread. */
    public State state() {
        return state;
    }
}
