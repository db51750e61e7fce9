package tautlog.desk.cli;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A length of time as it is written on a command line: {@code 30s}, {@code 2.5s}, {@code 2min}. */
final class Around {
    private static final Pattern FORM = Pattern.compile("(\\d{1,6}(?:\\.\\d{1,3})?)\\s*(s|min|h)?");
    /** Chosen: a longer look is a report. */
    private static final double MOST_SECONDS = 6 * 3600;

    private Around() {}

    /** Without a unit it is seconds; above 0 and at most six hours. */
    static double seconds(String option, String text) throws UsageException {
        Matcher found = FORM.matcher(text.strip());
        if (found.matches()) {
            String unit = found.group(2) == null ? "s" : found.group(2);
            double seconds =
                    Double.parseDouble(found.group(1)) * (unit.equals("h") ? 3600 : unit.equals("min") ? 60 : 1);
            if (seconds > 0 && seconds <= MOST_SECONDS) {
                return seconds;
            }
        }
        throw new UsageException(
                option + ": \"" + text + "\" is not a length of time.\n  Write 30s or 2min; above 0, at most 6h.");
    }
}
