package tautlog.logger.publish;

import com.google.gson.JsonObject;
import java.util.Optional;
import java.util.OptionalDouble;

/** One thing to be published. */
public sealed interface Item {
    /** Of the recording; no other item of its kind has it: repeats are dropped by it. {@code analyzer/RECORDING.md}, "Positions". */
    String position();

    /** Index of the outing in its recording. */
    int outing();

    /** The last number of the position: rises within an outing. */
    long number();

    /** When it began, UTC in microseconds since 1970. */
    long utcMicros();

    /**
     * A second of the line, in newtons.
     *
     * @param share greatest tension / limit
     * @param flags as {@link tautlog.detect.Second}
     */
    record OfSecond(
            String position,
            int outing,
            long number,
            long utcMicros,
            double leastNewtons,
            double meanNewtons,
            double greatestNewtons,
            double share,
            OptionalDouble shaftRpm,
            String hookup,
            int flags)
            implements Item {}

    /** A finding; {@code fields} as in {@code report --json}. */
    record OfFinding(
            String position,
            int outing,
            long number,
            long utcMicros,
            String kind,
            Optional<String> hookup,
            JsonObject fields)
            implements Item {}

    /** The outing's meters after the pull whose position it has. */
    record OfMeters(String position, int outing, long number, long utcMicros, JsonObject fields) implements Item {}
}
