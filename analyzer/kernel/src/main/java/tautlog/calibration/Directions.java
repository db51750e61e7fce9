package tautlog.calibration;

import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import tautlog.config.Reading;

/**
 * From which side the loads of a calibration between its least and its greatest were come to. A cell reads otherwise on the way
 * down than on the way up (hysteresis); only readings of both ways have that in their scatter.
 */
public enum Directions {
    /** From below only. */
    UP("hysteresis: the calibration's loads were come to from below only"),
    /** From above only. */
    DOWN("hysteresis: the calibration's loads were come to from above only"),
    /** Some from below, some from above: the scatter holds hysteresis. */
    BOTH(""),
    /** Nobody wrote it. */
    UNKNOWN("hysteresis: the calibration does not say that its loads were come to from below and from above");

    private final String leftOut;

    Directions(String leftOut) {
        this.leftOut = leftOut;
    }

    /** What figures of such a calibration do not hold, in words; empty when they do. */
    public Optional<String> leftOut() {
        return Optional.of(leftOut).filter(words -> !words.isEmpty());
    }

    /** As in the file: {@code up}; {@link #UNKNOWN} is not written. */
    public String word() {
        return Reading.word(this);
    }

    static Map<String, Directions> words() {
        return Arrays.stream(values())
                .filter(value -> value != UNKNOWN)
                .collect(Collectors.toMap(Directions::word, value -> value));
    }
}
