package tautlog.usage;

import java.util.TreeMap;

/** Counts a {@link TimeSum} up. */
final class Span {
    private final TreeMap<Long, Long> unitsByMillihertz = new TreeMap<>();

    void add(long units, long millihertz) {
        if (units != 0) {
            unitsByMillihertz.merge(millihertz, units, Math::addExact);
        }
    }

    TimeSum sum() {
        return new TimeSum(unitsByMillihertz);
    }

    double hours() {
        return sum().hours();
    }
}
