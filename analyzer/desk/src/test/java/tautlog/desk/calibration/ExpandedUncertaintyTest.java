package tautlog.desk.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tautlog.calibration.CellCalibration;
import tautlog.calibration.FitQuality;

class ExpandedUncertaintyTest {
    /** Source: Student's t, two-sided 95 %, any table of it: 12.706, 2.228, 1.960 for 1, 10 and endless degrees of freedom. */
    @Test
    void multipliesByStudentsT() {
        assertEquals(12.706, ExpandedUncertainty.t(1), 5e-4);
        assertEquals(2.228, ExpandedUncertainty.t(10), 5e-4);
        assertEquals(1.960, ExpandedUncertainty.t(1e6), 5e-4);
    }

    /** A new reading of a known load, by a calibration with known errors: the interval must hold 93 to 97 of 100. */
    @Test
    void holdsTheTrueLoadNinetyFiveTimesInAHundred() {
        Random random = new Random(11);
        double[] loads = {0, 5_000, 10_000, 20_000, 30_000, 40_000};
        int held = 0;
        int all = 4_000;
        for (int i = 0; i < all; i++) {
            double[] counts = new double[loads.length];
            for (int k = 0; k < loads.length; k++) {
                counts[k] = 4_000 + 2 * loads[k] + 20 * random.nextGaussian();
            }
            ResponseFit fit = ResponseFit.of(loads, counts, 1);
            double load = 40_000 * random.nextDouble();
            double read = 4_000 + 2 * load + 20 * random.nextGaussian();
            double shown =
                    (read - fit.coefficients().get(0)) / fit.coefficients().get(1);
            FitQuality quality = quality(fit, OptionalDouble.empty());
            double reach = new ExpandedUncertainty(fit, quality).at(load).plusMinusNewtons();
            held += Math.abs(shown - load) <= reach ? 1 : 0;
        }
        double share = (double) held / all;
        assertTrue(share > 0.93 && share < 0.97, "held " + share);
    }

    @Test
    void addsTheReferenceLoadsAsASquare() {
        // given: exact readings, reference ± 0.2 % (k = 2) of 10 kN: standard 10 N; t of endless freedom 1.95996
        double[] loads = {0, 5_000, 10_000, 20_000};
        double[] counts = {0, 10_000, 20_000, 40_000};
        ResponseFit fit = ResponseFit.of(loads, counts, 1);

        double reach = new ExpandedUncertainty(fit, quality(fit, OptionalDouble.of(0.2)))
                .at(10_000)
                .plusMinusNewtons();

        assertEquals(19.5996, reach, 1e-3);
    }

    /** An indicator with steps of 10 N whose readings all lie on a straight line. */
    private static CalibrationStudy indicator() throws Exception {
        return Tables.study(Tables.kilonewtons(
                "0,0,up,1",
                "5,500,up,1",
                "10,1000,up,1",
                "20,2000,up,1",
                "30,3000,up,1",
                "20,2000,down,1",
                "10,1000,down,1",
                "5,500,down,1",
                "0,0,down,1"));
    }

    @Test
    void isNeverFinerThanTheReadingsAreWritten() throws Exception {
        // given: half a count is 5 N, a rectangle of which 95 % is 4.75 N
        CalibrationStudy study = indicator();

        for (ExpandedUncertainty.At at : study.uncertainty().atEach(study.steps())) {
            assertTrue(at.plusMinusNewtons() > 4.75 && at.plusMinusNewtons() < 10, at.toString());
        }
        assertEquals(1, study.lowerLimitCounts());
        assertEquals(10, study.lowerLimitNewtons(), 1e-9);
        assertTrue(Tables.kinds(study).contains("step-unseen"));
        assertTrue(
                study.leavesOut().stream().anyMatch(words -> words.startsWith("a display that steps by more than 1")));
    }

    @Test
    void keepsTheResolutionInTheFileAndTheResidualsAsTheyAre() throws Exception {
        CalibrationStudy study = indicator();

        FitQuality read = CellCalibration.parse("calibration.toml", CalibrationToml.render(study))
                .quality()
                .orElseThrow();

        assertEquals(study.chosen().fit().residualSd(), read.residualSdCounts());
        assertEquals(1, read.resolutionCounts());
        assertEquals(1 / Math.sqrt(12), read.scatterSdCounts(), 1e-12);
        // textbook: 1/n + (F − mean)² / (Σ F² − n mean²), nine loads of 100 kN in all, Σ F² = 1950 kN²
        double mean = 100 / 9.0;
        double leverage = 1 / 9.0 + Math.pow(20 - mean, 2) / (1_950 - 100 * mean);
        assertEquals(Math.sqrt(leverage / 12), read.responseSdCounts(20_000), 1e-6);
    }

    /** A display of which everybody knows that it steps by ten shows so as soon as it wavers. */
    @Test
    void seesTheStepOfADisplayInReadingsThatDiffer() throws Exception {
        CalibrationStudy study = Tables.study(Tables.kilonewtons(
                "0,3,up,1", "10,10003,up,1", "20,20013,up,1", "30,30003,up,1", "20,20003,down,1", "0,3,down,1"));

        assertEquals(0, new BigDecimal("10").compareTo(study.countStep().counts()));
        assertTrue(study.countStep().isSeen());
        assertTrue(study.lowerLimitCounts() >= 10);
        assertFalse(Tables.kinds(study).contains("step-unseen"));
    }

    @Test
    void takesMeansOfCountsThatHardlyScatterForNoFinerThanACount() throws Exception {
        String rows = "load,unit,counts,direction,run,sd_counts\n0,kN,0.002,up,1,%1$s\n10,kN,999.998,up,1,%1$s\n"
                + "20,kN,2000.004,up,1,%1$s\n20,kN,2000.002,down,1,%1$s\n";

        CalibrationStudy quiet = Tables.study(ReadingsTable.parse("readings.csv", rows.formatted("0.045")));
        CalibrationStudy noisy = Tables.study(ReadingsTable.parse("readings.csv", rows.formatted("4.500")));

        assertEquals(1, quiet.quality().resolutionCounts());
        assertEquals(0.002, noisy.quality().resolutionCounts());
    }

    @Test
    void saysThatAnUnknownReferenceIsLeftOut() throws Exception {
        CalibrationStudy study =
                Tables.study(Tables.kilonewtons("0,1000,up,1", "10,3001,up,1", "20,4999,up,1", "30,7000,up,1"));

        List<String> left = ExpandedUncertainty.leavesOut(study.quality(), study.behaviour());

        assertTrue(left.get(0).contains("reference loads"), left.toString());
        assertFalse(
                ExpandedUncertainty.leavesOut(quality(study.chosen().fit(), OptionalDouble.of(0.1)), study.behaviour())
                        .get(0)
                        .contains("reference loads"));
    }

    private static FitQuality quality(ResponseFit fit, OptionalDouble reference) {
        return new FitQuality(
                fit.residualSd(),
                0,
                fit.degreesOfFreedom(),
                fit.covariance(),
                0,
                40_000,
                reference,
                tautlog.calibration.Directions.BOTH);
    }
}
