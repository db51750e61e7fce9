package tautlog.desk.calibration;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import tautlog.quantity.ForceUnit;

/**
 * The readings of one calibration, in the order of the file.
 *
 * @param file its name, for messages
 * @param readings three or more, at two loads or more
 * @param shuntSteps by how much the counts rose when the shunt resistor was switched on, once for each time
 * @param units in which the loads are written, in the order of their first use
 * @param loadStepNewtons one step of the last digit to which loads are written
 * @param countStep one step of the last digit to which counts are written; 1 or more where a mean is of counts that hardly scattered
 * @param lastAt when the last reading was taken; empty when the file does not say
 * @param unused columns of the file that are not known here
 */
public record LoadReadings(
        String file,
        List<LoadReading> readings,
        List<BigDecimal> shuntSteps,
        List<ForceUnit> units,
        BigDecimal loadStepNewtons,
        BigDecimal countStep,
        Optional<Instant> lastAt,
        List<String> unused) {
    public LoadReadings {
        readings = List.copyOf(readings);
        shuntSteps = List.copyOf(shuntSteps);
        units = List.copyOf(units);
        unused = List.copyOf(unused);
    }

    double[] newtons() {
        return readings.stream()
                .mapToDouble(reading -> reading.newtons().doubleValue())
                .toArray();
    }

    double[] counts() {
        return readings.stream()
                .mapToDouble(reading -> reading.counts().doubleValue())
                .toArray();
    }
}
