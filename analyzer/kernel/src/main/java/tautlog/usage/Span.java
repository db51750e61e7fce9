package tautlog.usage;

/** Counts a {@link TimeSum} of one rate up, without allocating. */
final class Span {
    private final long millihertz;
    private long units;

    /** Units of which {@code millihertz} thousandths make a second. */
    Span(long millihertz) {
        this.millihertz = millihertz;
    }

    void add(long more) {
        units = Math.addExact(units, more);
    }

    TimeSum sum() {
        return TimeSum.of(units, millihertz);
    }

    double hours() {
        return sum().hours();
    }
}
