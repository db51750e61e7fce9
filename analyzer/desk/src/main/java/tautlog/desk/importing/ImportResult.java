package tautlog.desk.importing;

import java.nio.file.Path;

/**
 * What an import made.
 *
 * @param gaps jumps in the numbers of the readings
 * @param timeKnown false when the times only count from an unknown moment
 * @param leftOut lines without a reading
 * @param leftOutFirst where the first of them stands and why, for a message; empty with none
 */
public record ImportResult(
        Path recording,
        long readings,
        double rateHertz,
        long gaps,
        boolean timeKnown,
        long leftOut,
        String leftOutFirst) {}
