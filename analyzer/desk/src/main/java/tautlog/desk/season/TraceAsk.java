package tautlog.desk.season;

import java.util.Optional;

/**
 * Which time of which winch is to be shown.
 *
 * @param from microseconds since 1970; of an outing without a clock since its first sample
 * @param to later than {@code from}
 * @param columns 1 to 4,000
 * @param outing id of the outing without a clock that is asked for
 */
public record TraceAsk(String winch, long from, long to, int columns, Optional<String> outing, WhatIf whatIf) {
    public static final int MOST_COLUMNS = 4_000;

    /** @throws IllegalArgumentException if a number is out of its range */
    public TraceAsk {
        if (to <= from || columns < 1 || columns > MOST_COLUMNS) {
            throw new IllegalArgumentException("a trace needs from < to and 1 to " + MOST_COLUMNS + " columns, was "
                    + from + " to " + to + " in " + columns);
        }
    }
}
