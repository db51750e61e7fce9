package tautlog.logger.instrument.text;

/**
 * Reads a number with a fixed count of decimals as a whole number of its last digit's steps: {@code - 1.20} with two is −120.
 *
 * <p>A sign, digits, with decimals a point or comma and just so many digits behind it, spaces around: anything else, above all a
 * point that was lost or moved, is no number.
 */
final class NumberText {
    private static final int MOST_DIGITS = 12;

    private final int decimals;
    private long counts;

    NumberText(int decimals) {
        this.decimals = decimals;
    }

    /** The number read last, times ten to the power of the decimals. */
    long counts() {
        return counts;
    }

    /** False when {@code text} from {@code start} to before {@code stop} is no such number. */
    boolean read(LineText text, int start, int stop) {
        int end = stop;
        while (end > start && text.at(end - 1) == ' ') {
            end--;
        }
        int at = skipSpaces(text, start, end);
        boolean isNegative = at < end && text.at(at) == '-';
        if (at < end && (isNegative || text.at(at) == '+')) {
            at = skipSpaces(text, at + 1, end);
        }
        int point = decimals == 0 ? end : end - decimals - 1;
        if (at >= point || end - at > MOST_DIGITS || (decimals > 0 && !isPoint(text.at(point)))) {
            return false; // at least one digit before the point
        }
        long value = 0;
        for (int i = at; i < end; i++) {
            if (i == point) {
                continue;
            }
            int digit = text.at(i) - '0';
            if (digit < 0 || digit > 9) {
                return false;
            }
            value = 10 * value + digit;
        }
        counts = isNegative ? -value : value;
        return true;
    }

    private static boolean isPoint(char at) {
        return at == '.' || at == ',';
    }

    private static int skipSpaces(LineText text, int start, int end) {
        int at = start;
        while (at < end && text.at(at) == ' ') {
            at++;
        }
        return at;
    }
}
