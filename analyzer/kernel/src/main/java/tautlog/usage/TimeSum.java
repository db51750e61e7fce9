package tautlog.usage;

import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * A sum of times that is exact until it is read: counted in the units in which they were measured (samples, ticks), one count per
 * rate. So neither the order of the parts nor how they are grouped changes the result.
 *
 * @param unitsByMillihertz how many units, by how many thousands of them make a second; none of them 0
 */
public record TimeSum(SortedMap<Long, Long> unitsByMillihertz) {
    public static final TimeSum ZERO = new TimeSum(new TreeMap<>());

    public TimeSum {
        TreeMap<Long, Long> copy = new TreeMap<>(unitsByMillihertz);
        copy.values().removeIf(units -> units == 0);
        unitsByMillihertz = Collections.unmodifiableSortedMap(copy);
    }

    /** {@code units} of which {@code millihertz} thousandths make a second. */
    public static TimeSum of(long units, long millihertz) {
        return new TimeSum(new TreeMap<>(Map.of(millihertz, units)));
    }

    public TimeSum plus(TimeSum other) {
        if (isZero()) {
            return other;
        }
        if (other.isZero()) {
            return this;
        }
        TreeMap<Long, Long> sum = new TreeMap<>(unitsByMillihertz);
        other.unitsByMillihertz.forEach((millihertz, units) -> sum.merge(millihertz, units, Math::addExact));
        return new TimeSum(sum);
    }

    public boolean isZero() {
        return unitsByMillihertz.isEmpty();
    }

    /** In hours, to the rounding of a double: the only step that is not exact. */
    public double hours() {
        double hours = 0;
        for (Map.Entry<Long, Long> part : unitsByMillihertz.entrySet()) {
            hours += part.getValue() / 3_600.0 / part.getKey() * 1_000.0;
        }
        return hours;
    }
}
