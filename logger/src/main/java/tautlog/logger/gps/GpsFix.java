package tautlog.logger.gps;

import java.util.Optional;

/**
 * What a receiver told last, as it stands at one moment.
 *
 * @param place empty when it has none, said so, or has been silent for more than 10 s
 * @param utc empty before it told a time with a date
 */
public record GpsFix(Optional<Place> place, Optional<Time> utc) {
    static final GpsFix NONE = new GpsFix(Optional.empty(), Optional.empty());

    /**
     * Where the receiver was (WGS 84).
     *
     * @param nanos when the sentence was complete here, by the clock that never goes back
     * @param latitudeE7 ten-millionths of a degree, north above 0
     * @param longitudeE7 ten-millionths of a degree, east above 0
     * @param satellites used, 0 when not told
     * @param dilutionTenths horizontal dilution of precision in tenths, 0 when not told
     */
    public record Place(long nanos, int latitudeE7, int longitudeE7, int satellites, int dilutionTenths) {}

    /**
     * What time it was.
     *
     * @param nanos when the sentence was complete here
     * @param utcMicros the sentence's time in microseconds since 1970: earlier than {@code nanos} by what the receiver and the
     *     line took, 0.05 to 1 s
     */
    public record Time(long nanos, long utcMicros) {
        /** What time it is at {@code nowNanos}, by the clock that never goes back. */
        long at(long nowNanos) {
            return utcMicros + (nowNanos - nanos) / 1_000;
        }
    }
}
