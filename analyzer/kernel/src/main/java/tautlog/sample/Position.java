package tautlog.sample;

/**
 * Where the winch was, by a satellite receiver (WGS 84).
 *
 * @param tick of the outing's instrument at which this was heard; the receiver's place is up to a second older
 * @param latitudeE7 ten-millionths of a degree, north above 0, −900,000,000 to 900,000,000
 * @param longitudeE7 ten-millionths of a degree, east above 0, −1,800,000,000 to 1,800,000,000
 * @param satellites used, 0 when not told
 * @param dilutionTenths horizontal dilution of precision in tenths, 0 when not told
 */
public record Position(long tick, int latitudeE7, int longitudeE7, int satellites, int dilutionTenths) {
    private static final int POLE = 900_000_000;
    private static final int DATE_LINE = 1_800_000_000;

    /** @throws IllegalArgumentException if a number is out of its range */
    public Position {
        if (latitudeE7 < -POLE || latitudeE7 > POLE || longitudeE7 < -DATE_LINE || longitudeE7 > DATE_LINE) {
            throw new IllegalArgumentException(
                    "no place on earth: latitudeE7 " + latitudeE7 + ", longitudeE7 " + longitudeE7);
        }
        if (satellites < 0 || dilutionTenths < 0) {
            throw new IllegalArgumentException(
                    "satellites and dilutionTenths must not be below 0, were " + satellites + ", " + dilutionTenths);
        }
    }
}
