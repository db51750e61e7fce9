package tautlog.desk.report;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;

/** Adds meters up. */
public final class HourSum {
    private HourSum() {}

    /**
     * The sum of several outings' meters. One that only some of them know is the sum of those; one that none knows stays
     * unknown.
     */
    public static Report.Hours of(List<Report.Hours> parts) {
        List<Double> bands = new ArrayList<>();
        for (int band = 0; band < JsonReport.BAND_KEYS.size(); band++) {
            int at = band;
            bands.add(
                    parts.stream().mapToDouble(part -> part.bandHours().get(at)).sum());
        }
        return new Report.Hours(
                known(parts, Report.Hours::shaftHours),
                parts.stream().mapToDouble(Report.Hours::pullHours).sum(),
                known(parts, Report.Hours::winchingHours),
                known(parts, Report.Hours::heldHours),
                known(parts, Report.Hours::jointHours),
                parts.isEmpty() || parts.stream().anyMatch(Report.Hours::jointIsAtMost),
                bands);
    }

    private static OptionalDouble known(List<Report.Hours> parts, Function<Report.Hours, OptionalDouble> meter) {
        double[] values = parts.stream()
                .map(meter)
                .filter(OptionalDouble::isPresent)
                .mapToDouble(OptionalDouble::getAsDouble)
                .toArray();
        return values.length == 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(java.util.Arrays.stream(values).sum());
    }
}
