package tautlog.desk.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tautlog.config.ConfigException;

/** What the two NIST data sets must be taken for is checked in CalibrateCommandTest, through the command. */
class DegreeChoiceTest {
    private static CalibrationStudy cell(double bend, long seed) throws ConfigException {
        Random random = new Random(seed);
        List<String> rows = new ArrayList<>();
        for (int run = 1; run <= 2; run++) {
            for (int load = 0; load <= 50; load += 10) {
                double counts = 4_000 + 2_000.0 * load + bend * load * load + 3 * random.nextGaussian();
                rows.add(load + "," + Math.round(counts * 10) / 10.0 + ",up," + run);
            }
        }
        return Tables.study(Tables.kilonewtons(rows.toArray(String[]::new)));
    }

    @Test
    void takesTheLineForAStraightCellAlmostAlways() throws ConfigException {
        int curves = 0;
        for (int seed = 0; seed < 400; seed++) {
            curves += cell(0, seed).degree() - 1;
        }
        assertTrue(curves <= 10, "the F test at 1 % took " + curves + " curves of 400 straight cells");
    }

    @Test
    void takesTheCurveForABendThatTheNoiseDoesNotHide() throws ConfigException {
        for (int seed = 0; seed < 50; seed++) {
            // 0.05 counts/kN²: 31 counts off a line in the middle, ten times the noise
            assertEquals(2, cell(0.05, seed).degree());
        }
    }

    @Test
    void takesTheLineWhereNoReadingIsFurtherThanHalfAStep() throws ConfigException {
        CalibrationStudy study =
                Tables.study(Tables.kilonewtons("0,10,up,1", "1,20,up,1", "2,30,up,1", "3,41,up,1", "4,51,up,1"));

        assertEquals(1, study.degree());
        assertTrue(
                study.choice().because().contains("half a step"), study.choice().because());
    }

    @Test
    void isNotSettledByThreeLoads() throws ConfigException {
        CalibrationStudy study =
                Tables.study(Tables.kilonewtons("0,10,up,1", "10,2000,up,1", "20,5000,up,1", "20,5001,up,1"));

        assertEquals(1, study.degree());
        assertFalse(study.choice().settled());
        assertTrue(Tables.kinds(study).contains("degree-not-settled"));
    }
}
