package tautlog.desk.report;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Function;

/** Adds meters up. */
public final class HourSum {
    private HourSum() {}

    /**
     * The sum of several outings' meters. Of shaft hours that only some of them know the sum is "at least"; the joint's are
     * a bound from above, so they are unknown when one part is.
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
                isPartial(parts, Report.Hours::jointHours)
                        ? OptionalDouble.empty()
                        : known(parts, Report.Hours::jointHours),
                parts.isEmpty()
                        || isPartial(parts, Report.Hours::jointHours)
                        || parts.stream().anyMatch(Report.Hours::jointIsAtMost),
                bands,
                isPartial(parts, Report.Hours::shaftHours) || parts.stream().anyMatch(Report.Hours::shaftIsAtLeast));
    }

    private static boolean isPartial(List<Report.Hours> parts, Function<Report.Hours, OptionalDouble> meter) {
        long known = parts.stream().map(meter).filter(OptionalDouble::isPresent).count();
        return known > 0 && known < parts.size();
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
