package tautlog.desk.service;

import java.nio.charset.StandardCharsets;

/** Content lines of iCalendar. Source: RFC 5545, 3.1 (lines, folding) and 3.3.11 (escaping of a text). */
final class CalendarText {
    /** RFC 5545, 3.1: at most 75 octets without the line break. */
    private static final int MOST_OCTETS = 75;

    private final StringBuilder out = new StringBuilder();

    /** Adds {@code name:value}; {@code value} is written as it is. */
    CalendarText line(String name, String value) {
        fold(name + ":" + value);
        return this;
    }

    /** Adds {@code name:value} with a value of type TEXT. */
    CalendarText text(String name, String value) {
        return line(name, escaped(value));
    }

    /** Control characters, which no text may hold, are left out. */
    static String escaped(String text) {
        return text.replace("\r\n", "\n")
                .replaceAll("[\\p{Cntrl}&&[^\n\t]]", "")
                .replace("\\", "\\\\")
                .replace(";", "\\;")
                .replace(",", "\\,")
                .replace("\n", "\\n");
    }

    /** Breaks between characters, never amid the octets of one; the space that begins the next line counts as one octet of it. */
    private void fold(String line) {
        int octets = 0;
        for (int i = 0; i < line.length(); i = line.offsetByCodePoints(i, 1)) {
            String character = line.substring(i, line.offsetByCodePoints(i, 1));
            int more = character.getBytes(StandardCharsets.UTF_8).length;
            if (octets + more > MOST_OCTETS) {
                out.append("\r\n ");
                octets = 1;
            }
            out.append(character);
            octets += more;
        }
        out.append("\r\n");
    }

    @Override
    public String toString() {
        return out.toString();
    }
}
