package tautlog.desk.analysis;

import java.time.Instant;
import java.util.Optional;
import tautlog.desk.report.Moment;
import tautlog.recording.Outing;
import tautlog.recording.Recording;
import tautlog.recording.RecordingException;
import tautlog.sample.Evidence;
import tautlog.sample.OutingClock;

/**
 * From sample numbers and ticks to times: number to tick by the recording, tick to UTC by the outing's clock. And to places, once
 * a replay went by.
 */
public final class OutingTimes {
    private final Recording recording;
    private final Outing outing;
    private final int ordinal;
    private final OutingClock clock;
    private final PlaceTrack places;

    /** @param ordinal the outing's place in the history, from 1 */
    OutingTimes(Recording recording, Outing outing, int ordinal) {
        this.recording = recording;
        this.outing = outing;
        this.ordinal = ordinal;
        this.clock = clock(outing);
        places = new PlaceTrack(outing.start().instrument().tickHz());
    }

    static OutingClock clock(Outing outing) {
        return OutingClock.of(outing.clockFixes(), outing.start().instrument().tickHz());
    }

    /** When sample {@code number}, which exists, was taken. */
    public Moment ofNumber(long number) throws RecordingException {
        return ofTick(tickOf(number));
    }

    /** The tick of sample {@code number}, which exists. */
    public long tickOf(long number) throws RecordingException {
        return recording.tickOf(outing, number);
    }

    public Moment ofTick(long tick) {
        return new Moment(utc(tick), ordinal, seconds(tick), places.at(tick));
    }

    /** Passes a replay of the outing on to {@code next}; the moments asked for later then know the place. */
    Evidence notingPlaces(Evidence next) {
        return places.noting(next);
    }

    /** Seconds since the outing's first sample, by the instrument's counter. */
    public double seconds(long tick) {
        return (double) (tick - outing.firstTick())
                / outing.start().instrument().tickHz();
    }

    /** Empty while the outing has no clock. */
    public Optional<Instant> utc(long tick) {
        return clock.instant(tick);
    }
}
