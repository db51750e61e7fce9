package tautlog.logger.calibrate;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import tautlog.quantity.ForceUnit;

/** What a person types while calibrating. */
public sealed interface TypedLine {
    /**
     * A reference load hangs.
     *
     * @param load as typed, 0 or more, a plain number
     * @param direction {@code up}, {@code down} or empty
     * @param run its name, may be empty
     */
    record Load(String load, ForceUnit unit, String direction, String run) implements TypedLine {}

    /** The shunt resistor was switched on, at the load before. */
    record Shunt() implements TypedLine {}

    /** No more. */
    record Done() implements TypedLine {}

    /** Nothing that can be taken, and what can. */
    record Unclear(String words) implements TypedLine {}

    /** An empty line. */
    record Nothing() implements TypedLine {}

    /**
     * Reads a line: {@code 10}, {@code 10 kN up}, {@code 10 down run2}, {@code shunt}, {@code done}.
     *
     * @param unit of a load that is typed without one
     */
    static TypedLine read(String line, ForceUnit unit) {
        List<String> words = new ArrayList<>(List.of(line.strip().split("\\s+")));
        String first = words.get(0).toLowerCase(Locale.ROOT);
        if (first.isEmpty() || first.startsWith("#")) {
            return new Nothing();
        }
        if (words.size() == 1 && first.equals("shunt")) {
            return new Shunt();
        }
        if (words.size() == 1 && List.of("done", "end", "quit").contains(first)) {
            return new Done();
        }
        return load(words, unit);
    }

    private static TypedLine load(List<String> words, ForceUnit unit) {
        String number = words.remove(0);
        if (!Pattern.matches("\\d{1,12}(\\.\\d{1,9})?", number)) {
            return new Unclear("\"" + number + "\" is no load: write a number of 0 or more, with a point (10 or 12.5)");
        }
        ForceUnit of = words.isEmpty() ? unit : ForceUnit.of(words.get(0)).orElse(unit);
        if (!words.isEmpty() && ForceUnit.of(words.get(0)).isPresent()) {
            words.remove(0);
        }
        String direction = words.isEmpty() ? "" : words.get(0).toLowerCase(Locale.ROOT);
        boolean isSaid = direction.equals("up") || direction.equals("down");
        if (isSaid) {
            words.remove(0);
        }
        if (words.size() > 1 || words.stream().anyMatch(word -> !Pattern.matches("[A-Za-z0-9._-]{1,32}", word))) {
            return new Unclear("\"" + String.join(" ", words)
                    + "\" is not understood here: LOAD [UNIT] [up or down] [RUN], for example: 10 kN up 1");
        }
        return new Load(
                new BigDecimal(number).toPlainString(),
                of,
                isSaid ? direction : "",
                Optional.of(words)
                        .filter(left -> !left.isEmpty())
                        .map(left -> left.get(0))
                        .orElse(""));
    }
}
