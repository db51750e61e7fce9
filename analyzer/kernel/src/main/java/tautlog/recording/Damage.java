package tautlog.recording;

/**
 * A piece of a recording that is not what was written.
 *
 * @param outing which outing it belongs to, 0 for the first; -1 when that cannot be told
 * @param place what it is and where in the file: {@code samples block 17}
 * @param firstNumber of the samples that it covers, as the file's index says; {@code lastNumber} below it when it covers none
 * @param lastNumber of the samples that it covers
 * @param time UTC at its first tick, ISO 8601, or {@code time unknown}
 * @param reason what is wrong with it
 */
public record Damage(int outing, String place, long firstNumber, long lastNumber, String time, String reason) {
    /** One line for a person, the outing counted from 1. */
    public String summary() {
        String numbers = lastNumber < firstNumber ? "" : ", samples " + firstNumber + " to " + lastNumber;
        String where = outing < 0 ? "" : "outing " + (outing + 1) + ", ";
        return where + place + numbers + ", " + time + ": " + reason;
    }
}
