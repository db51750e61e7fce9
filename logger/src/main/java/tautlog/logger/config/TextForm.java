package tautlog.logger.config;

import java.util.Optional;
import java.util.regex.Pattern;

/**
 * How a line of text says a reading.
 *
 * <p>Named groups of the pattern: {@code value} (sign, digits, point; needed), {@code unit}, {@code overload} and {@code
 * underload} (beyond the end of the scale, without a number), {@code net} (a tared reading: not used), {@code stable} (not
 * asked), {@code checksum} (two hexadecimal digits).
 *
 * @param pattern of a whole line without its end
 * @param length characters of every line; empty when they vary, and then a lost digit cannot be told
 */
public record TextForm(Pattern pattern, Optional<Integer> length, LineEnd lineEnd, Checksum checksum) {
    /** What ends a line. A lone carriage return or line feed where both are expected is damage. */
    public enum LineEnd {
        CRLF,
        CR,
        LF
    }

    /** What the two hexadecimal digits of the group {@code checksum} are, over all characters before the group. */
    public enum Checksum {
        /** Exclusive or. */
        XOR,
        /** Sum, of which the lowest eight bits count. */
        SUM
    }

    /** Whether the pattern has the group. */
    public boolean has(String group) {
        return hasGroup(pattern, group);
    }

    static boolean hasGroup(Pattern pattern, String group) {
        return pattern.pattern().contains("(?<" + group + ">");
    }
}
