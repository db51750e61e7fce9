package tautlog.logger.config;

import java.util.regex.Pattern;

/** Common shapes of an indicator's line, ready to use; named after what stands in them, in order. */
enum TextShape {
    /** {@code +  12.34}; beyond the scale {@code OL}, dashes or carets. */
    SIGN_VALUE(Shape.VALUE_OR_OVERLOAD + " *"),
    /** {@code +  12.34 kN}. */
    SIGN_VALUE_UNIT(Shape.VALUE_OR_OVERLOAD + " *(?<unit>[A-Za-z]{1,3})? *"),
    /** {@code +  12.34 kN*5A}: exclusive or or sum of all characters before the two digits. */
    SIGN_VALUE_UNIT_CHECKSUM(Shape.VALUE_OR_OVERLOAD + " *(?<unit>[A-Za-z]{1,3})? *\\*(?<checksum>[0-9A-F]{2})"),
    /** {@code ST,GS,+  12.34 kN}: ST stable, US in motion, OL overload; GS gross, NT net. */
    STATUS_KIND_VALUE_UNIT("(?:(?<overload>OL)|(?<stable>ST)|US),(?:GS|(?<net>NT|TR)),"
            + "(?<value>[+ -][ 0-9.,-]*) *(?<unit>[A-Za-z]{1,3}) *");

    private static final class Shape {
        static final String VALUE_OR_OVERLOAD =
                " *(?:(?<value>[+-]? *[0-9]+(?:[.,][0-9]+)?)|(?<overload>OL|-{4,}|\\^{4,})|(?<underload>-OL))";
    }

    private final Pattern pattern;

    TextShape(String regex) {
        pattern = Pattern.compile(regex);
    }

    Pattern pattern() {
        return pattern;
    }
}
