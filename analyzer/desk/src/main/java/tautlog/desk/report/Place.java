package tautlog.desk.report;

/**
 * Where the winch was, by its satellite receiver (WGS 84).
 *
 * @param latitudeDegrees north above 0
 * @param longitudeDegrees east above 0
 * @param ageSeconds how long before the time asked for this was told, 0 to 10
 */
public record Place(double latitudeDegrees, double longitudeDegrees, double ageSeconds) {}
