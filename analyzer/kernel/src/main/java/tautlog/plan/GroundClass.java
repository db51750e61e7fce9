package tautlog.plan;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * How a log is dragged over what.
 *
 * <p>The bands are common practice, no source, from memory and of low confidence: no published table was found, and Navratil
 * and Skoupy (2002, J. For. Sci. 48) conclude from measurements that one number cannot be given, only an interval that
 * depends on ground and log.
 */
public enum GroundClass {
    FLAT(0.5, 0.8, "log flat on the ground"),
    FRONT_RAISED(0.3, 0.5, "front end of the log raised"),
    WHOLE_TREE(0.6, 1.0, "whole tree with its branches"),
    SNOW(0.2, 0.4, "log on packed snow");

    private final double low;
    private final double high;
    private final String words;

    GroundClass(double low, double high, String words) {
        this.low = low;
        this.high = high;
        this.words = words;
    }

    /** Pull on level ground / weight. */
    public Interval friction() {
        return new Interval(low, high);
    }

    /** What it is, for a person. */
    public String words() {
        return words;
    }

    /** As a person writes it: {@code front-raised}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** From the least friction of any ground to the greatest: what is left to assume when nobody said. */
    static Interval widest() {
        return new Interval(
                Arrays.stream(values()).mapToDouble(g -> g.low).min().orElseThrow(),
                Arrays.stream(values()).mapToDouble(g -> g.high).max().orElseThrow());
    }

    /** All words, as a message lists them. */
    static String allowed() {
        return Arrays.stream(values())
                .map(ground -> ground.word() + " (" + ground.words + ")")
                .collect(Collectors.joining(", "));
    }
}
