package tautlog.usage;

import java.util.TreeMap;

/**
 * A sum of times that is exact until it is read: counted in the units in which they were measured (samples, ticks), one count per
 * rate. So neither the order of the parts nor how they are grouped changes the result.
 */
final class Span {
    private final TreeMap<Long, Long> unitsByMillihertz = new TreeMap<>();

    void add(long units, long millihertz) {
        if (units != 0) {
            unitsByMillihertz.merge(millihertz, units, Math::addExact);
        }
    }

    void add(Span other) {
        other.unitsByMillihertz.forEach((millihertz, units) -> add(units, millihertz));
    }

    double hours() {
        double hours = 0;
        for (var part : unitsByMillihertz.entrySet()) {
            hours += part.getValue() / 3_600.0 / part.getKey() * 1_000.0;
        }
        return hours;
    }
}
