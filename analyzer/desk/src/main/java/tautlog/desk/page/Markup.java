package tautlog.desk.page;

/** The one place where text from outside becomes part of a page's markup. */
public final class Markup {
    private Markup() {}

    /**
     * {@code text} as characters of an element or of a quoted attribute, in HTML and in XML. Characters that XML 1.0
     * does not allow, among them a terminal's escape, become U+FFFD, and so do those that turn the direction of writing: in a
     * name they would make the sentence round it read otherwise.
     */
    public static String escape(String text) {
        StringBuilder out = new StringBuilder(text.length() + 16);
        text.codePoints().forEach(c -> append(out, c));
        return out.toString();
    }

    private static void append(StringBuilder out, int c) {
        switch (c) {
            case '&' -> out.append("&amp;");
            case '<' -> out.append("&lt;");
            case '>' -> out.append("&gt;");
            case '"' -> out.append("&quot;");
            case '\'' -> out.append("&#39;");
            default -> out.appendCodePoint(isShown(c) ? c : 0xFFFD);
        }
    }

    /** Whether a reader may be shown it as it is. */
    static boolean isShown(int c) {
        return isAllowed(c) && !turnsDirection(c);
    }

    /** Embeddings, overrides and isolates, and the marks. Source: Unicode Standard Annex 9, 2.1 to 2.6. */
    private static boolean turnsDirection(int c) {
        return (c >= 0x202A && c <= 0x202E)
                || (c >= 0x2066 && c <= 0x2069)
                || c == 0x200E
                || c == 0x200F
                || c == 0x061C;
    }

    /** Source: XML 1.0, production 2 (Char), less the control characters from 7F to 9F. */
    private static boolean isAllowed(int c) {
        return c == '\t'
                || c == '\n'
                || (c >= 0x20 && c < 0x7F)
                || (c > 0x9F && c <= 0xD7FF)
                || (c >= 0xE000 && c <= 0xFFFD)
                || c >= 0x10000;
    }
}
