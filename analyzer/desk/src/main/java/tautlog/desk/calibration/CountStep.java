package tautlog.desk.calibration;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.List;

/**
 * By how much the counts of a calibration step: a reading may be off by half of it though nothing scatters.
 *
 * <p>Where readings at one load differ, it is the greatest number of which all differences between counts are multiples: a display that
 * steps by ten shows itself so. Where none differ, round loads make round counts and hide the step; one of the last written digit is
 * taken then, which is the least that it can be.
 *
 * @param counts above 0
 * @param isSeen whether readings at one load differ
 */
record CountStep(BigDecimal counts, boolean isSeen) {
    static CountStep of(LoadReadings readings, List<LoadStep> steps) {
        boolean isSeen = steps.stream().anyMatch(CountStep::differs);
        BigDecimal written = readings.countStep();
        return new CountStep(isSeen ? common(readings).max(written) : written, isSeen);
    }

    private static boolean differs(LoadStep step) {
        BigDecimal first = step.readings().get(0).counts();
        return step.readings().stream().anyMatch(reading -> reading.counts().compareTo(first) != 0);
    }

    private static BigDecimal common(LoadReadings all) {
        BigDecimal first = all.readings().get(0).counts();
        List<BigDecimal> apart = all.readings().stream()
                .map(reading -> reading.counts().subtract(first).stripTrailingZeros())
                .toList();
        int scale = Math.max(0, apart.stream().mapToInt(BigDecimal::scale).max().orElse(0));
        BigInteger divisor = apart.stream()
                .map(counts -> counts.setScale(scale).unscaledValue())
                .reduce(BigInteger.ZERO, BigInteger::gcd);
        return new BigDecimal(divisor, scale);
    }
}
