package tautlog.desk.incident;

/** The least and the greatest count of a span of seconds, and where the greatest was, the earliest of equals. */
final class Greatest {
    private final Witness.Span span;
    private int least = Integer.MAX_VALUE;
    private int greatest = Integer.MIN_VALUE;
    private long number;
    private double seconds;

    Greatest(Witness.Span span) {
        this.span = span;
    }

    void sample(long atNumber, double atSeconds, int count) {
        if (!span.holds(atSeconds)) {
            return;
        }
        least = Math.min(least, count);
        if (count > greatest) {
            greatest = count;
            number = atNumber;
            seconds = atSeconds;
        }
    }

    boolean isEmpty() {
        return least > greatest;
    }

    int least() {
        return least;
    }

    int greatest() {
        return greatest;
    }

    long number() {
        return number;
    }

    double seconds() {
        return seconds;
    }
}
