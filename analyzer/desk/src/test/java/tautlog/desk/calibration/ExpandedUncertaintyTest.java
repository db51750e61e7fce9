package tautlog.desk.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
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
                fit.degreesOfFreedom(),
                fit.covariance(),
                0,
                40_000,
                reference,
                tautlog.calibration.Directions.BOTH);
    }
}
