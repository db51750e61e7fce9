package tautlog.logger.run;

import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import tautlog.logger.instrument.InstrumentFeed;
import tautlog.logger.live.LiveOutings;
import tautlog.logger.port.InstrumentLine;
import tautlog.logger.recorder.LiveEvents;
import tautlog.logger.wire.LineCounts;

/**
 * What the reader thread does with bytes: the instrument's feed and the outings, one batch for each read. Looks at the two
 * clocks of this computer, once a batch.
 */
final class Intake implements LineReader.Listener {
    private static final long LOOK_NANOS = 1_000_000_000L;

    private final LiveEvents events;
    private final LiveOutings outings;
    private final Marks marks;
    private final InstrumentFeed feed;
    private final InstantSource clock;
    private final HearingWatch hearing;
    private long bytesSinceLook;
    private volatile LineCounts counts = LineCounts.NONE;
    private long countsNanos;

    /** @param feed tells {@code outings} what the bytes mean */
    Intake(
            LiveEvents events,
            LiveOutings outings,
            Marks marks,
            InstrumentFeed feed,
            HearingWatch hearing,
            InstantSource clock) {
        this.hearing = hearing;
        this.events = events;
        this.outings = outings;
        this.marks = marks;
        this.feed = feed;
        this.clock = clock;
    }

    @Override
    public void opened(InstrumentLine line) {
        feed.opened(line);
    }

    @Override
    public void bytes(byte[] bytes, int n) {
        long nowNanos = System.nanoTime();
        Instant utc = clock.instant(); // beside the counter: opening may wait
        events.open(nowNanos);
        try {
            outings.arriving(nowNanos, ChronoUnit.MICROS.between(Instant.EPOCH, utc));
            marks.serve(outings);
            feed.bytes(nowNanos, bytes, n);
            bytesSinceLook += n;
            if (nowNanos - countsNanos >= LOOK_NANOS) {
                countsNanos = nowNanos;
                counts = feed.counts();
                // what waits for its word order is understood, as far as it goes
                boolean isHeard = outings.hearsSamples() || feed.unproven().isPresent();
                hearing.look(bytesSinceLook, counts, isHeard, nowNanos);
                bytesSinceLook = 0;
            }
        } finally {
            events.shut();
        }
    }

    /** What was rejected and lost on the line, at most a second ago; any thread. */
    LineCounts counts() {
        return counts;
    }

    /** See {@link InstrumentFeed#unproven}; any thread. */
    Optional<String> unproven() {
        return feed.unproven();
    }

    @Override
    public void gone() {
        feed.gone();
        outings.lineGone(System.nanoTime());
    }

    @Override
    public void waiting() {
        bytes(new byte[0], 0);
        outings.lineGone(System.nanoTime());
    }

    /** Nothing more comes: ends the outing. */
    void end() {
        events.open(System.nanoTime());
        try {
            feed.end();
            counts = feed.counts();
        } finally {
            events.shut();
        }
    }
}
