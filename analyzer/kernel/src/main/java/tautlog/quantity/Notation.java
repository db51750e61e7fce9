package tautlog.quantity;

import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * How one kind of quantity is written: a number with a point, a space, a unit.
 *
 * @param noun with its article: {@code a force}
 * @param example of a good one: {@code 12.5 kN}
 * @param allowed range and units, as a clause: {@code above 0; units N, kN}
 */
record Notation(String noun, String example, String allowed) {
    // 15 digits on each side: more than any gear needs, and no number can grow without bound
    private static final Pattern NUMBER_AND_UNIT = Pattern.compile(
            "\\s*([+-]?\\d{1,15}(?:\\.\\d{1,15})?)\\s*([^\\s\\d.,+-](?:[^\\d,]*?|[^\\d,]*\\p{L}[23]))\\s*");
    private static final Pattern COMMA = Pattern.compile("\\s*[+-]?\\d+,\\d+.*");
    private static final Pattern NUMBER_ONLY = Pattern.compile("\\s*[+-]?\\d+(?:\\.\\d+)?\\s*");

    /** The number and the unit of {@code text}. */
    record Parts(BigDecimal number, String unit) {}

    Parts split(String text) {
        Matcher matcher = NUMBER_AND_UNIT.matcher(text);
        if (!matcher.matches()) {
            throw refuse(text);
        }
        return new Parts(new BigDecimal(matcher.group(1)), matcher.group(2));
    }

    QuantityException refuse(String text) {
        return refuse(text, nextStep(text));
    }

    QuantityException unknownUnit(String text, String unit) {
        return refuse(text, "The unit " + quoted(unit) + " is not known here.");
    }

    QuantityException notAboveZero(String text) {
        return refuse(text, "It must be greater than nothing.");
    }

    private QuantityException refuse(String text, String nextStep) {
        return new QuantityException(quoted(text) + " is not " + noun, nextStep + " Allowed: " + allowed + ".");
    }

    private String nextStep(String text) {
        if (COMMA.matcher(text).matches()) {
            return "Write the number with a point (\"" + example(text) + "\").";
        }
        if (NUMBER_ONLY.matcher(text).matches()) {
            return "Write the unit too (\"" + example + "\").";
        }
        return "Write a number and a unit (\"" + example + "\").";
    }

    private String example(String text) {
        String mended = text.strip().replace(',', '.');
        return NUMBER_AND_UNIT.matcher(mended).matches() ? mended : example;
    }

    /** The text in quotes, cut when it is long. */
    private static String quoted(String text) {
        String line = text.replaceAll("\\p{Cntrl}", "?");
        return '"' + (line.length() > 60 ? line.substring(0, 60) + "…" : line) + '"';
    }
}
