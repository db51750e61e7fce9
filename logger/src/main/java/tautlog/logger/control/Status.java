package tautlog.logger.control;

import com.google.gson.JsonObject;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import tautlog.logger.clock.BoardClock;
import tautlog.logger.config.KeepChoice;
import tautlog.logger.drive.DriveState;
import tautlog.logger.gps.GpsFix.Place;
import tautlog.logger.instrument.Hearing;
import tautlog.logger.live.LiveReadings;
import tautlog.logger.publish.PublisherState;
import tautlog.logger.recorder.DiskReserve;
import tautlog.logger.recorder.ThinningState;
import tautlog.logger.wire.LineCounts;

/**
 * What a logger is doing, at one moment.
 *
 * @param program name and version
 * @param written the moment, by this computer's clock
 * @param started when the logger started
 * @param closed true when it stopped in order
 * @param hangUps how often the port vanished since the start
 * @param beacon word for what the beacon shows
 * @param hasLamp whether the instrument has a lamp that shows it
 * @param clock what is thought of the time
 * @param shaft the shaft's own port, if it has one
 * @param line what it brought to no use, at most a second old
 * @param hearing what it brings
 * @param outing the one that is on, or was last
 * @param gps empty when none is configured
 * @param publishers by the outlet's name
 * @param drive empty when none is configured
 */
public record Status(
        String program,
        Instant written,
        Instant started,
        boolean closed,
        String winch,
        String port,
        boolean portOpen,
        long hangUps,
        String beacon,
        boolean hasLamp,
        ClockStatus clock,
        Optional<ShaftLine> shaft,
        LineCounts line,
        Hearing.State hearing,
        Optional<LiveReadings> outing,
        Optional<GpsStatus> gps,
        Map<String, PublisherState> publishers,
        DiskStatus disk,
        Optional<DriveState> drive) {
    public Status {
        publishers = Map.copyOf(publishers);
    }

    /** This as one JSON document, as {@code status --json} prints it. */
    public JsonObject json() {
        return StatusJson.of(this);
    }

    /**
     * Where UTC stands.
     *
     * @param source word of the configuration: host, gps or device
     * @param state of this computer's and the receiver's clock; empty when only the instrument's ticks count
     * @param timesSet how often it was set, or came to be known, since the start
     */
    public record ClockStatus(String source, Optional<BoardClock.State> state, long timesSet) {}

    /**
     * The port of the shaft's instrument.
     *
     * @param hangUps how often it vanished since the start
     */
    public record ShaftLine(String port, boolean open, long hangUps) {}

    /**
     * The satellite receiver.
     *
     * @param utcKnown whether it told the time within the last hour
     * @param place told in the last 10 s; empty when it has no fix or is mute
     * @param nanos now, by the clock of {@code place}
     * @param rejected lines that were not taken, by kind
     */
    public record GpsStatus(
            String port,
            boolean portOpen,
            boolean utcKnown,
            Optional<Place> place,
            long nanos,
            Map<String, Long> rejected) {
        public GpsStatus {
            rejected = Map.copyOf(rejected);
        }
    }

    /**
     * The recording.
     *
     * @param file that is written now
     * @param lagSeconds age of the oldest sample that the disk has not
     * @param lostSamples for which no room was left while the disk stalled
     * @param lostEvents other things for which no room was left
     * @param trouble what the disk says when it refuses
     * @param freeBytes left for this user, empty when the system does not say
     * @param low whether less is free than {@link DiskReserve#BYTES}
     * @param lastLink of the chain, as last committed; keep it elsewhere to prove that nothing was changed
     * @param keep what the owner allows to go when the disk is nearly full
     * @param thinning what went
     */
    public record DiskStatus(
            String folder,
            Optional<String> file,
            double lagSeconds,
            long lostSamples,
            long lostEvents,
            Optional<String> trouble,
            Optional<Long> freeBytes,
            boolean low,
            Optional<String> lastLink,
            KeepChoice keep,
            ThinningState thinning) {}
}
