package tautlog.detect;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import tautlog.fixtures.Rigs;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;

/** The bounds in counts never leave out what the doubles would find: tried at every count near them. */
class CurvedRelationsTest {
    private static final Rig RIG = Rigs.of("10000", List.of(Rigs.hookup("straight", "8000")));

    private static Relations relations(String newtonsPerCount, String curvature) {
        return Relations.of(
                new Calibration(new BigDecimal("-30.5"), new BigDecimal(newtonsPerCount), new BigDecimal(curvature)),
                RIG,
                500);
    }

    @Test
    void boundsAreNeverTooNarrow() {
        for (String factor : new String[] {"2", "0.37", "0.0001"}) {
            for (String curvature : new String[] {"1e-9", "-1e-6", "2e-5", "-2e-5"}) {
                Relations curve = relations(factor, curvature);
                int step = (int) (97 / Double.parseDouble(factor));
                for (int base = 10 * step; base < 150 * step; base += step) {
                    assertBounds(curve, base);
                }
            }
        }
    }

    private static void assertBounds(Relations curve, int base) {
        int jolt = (int) curve.joltsFrom(base);
        int drop = (int) curve.dropsTo(base);
        for (int i = 0; i < 20; i++) {
            assertFalse(curve.isJolt(base, jolt - 1 - i), "a jolt below the bound");
            assertFalse(curve.isDrop(base, drop + 1 + i), "a drop above the bound");
        }
        int low = (int) curve.spikeFreeFrom(base);
        int high = (int) curve.spikeFreeTo(base);
        assertFalse(curve.isSpike(high, low), "a spike within the band");
        // and no wider than a few counts
        assertTrue(curve.isJolt(base, jolt + 5));
        assertTrue(curve.isDrop(base, drop - 5));
        assertTrue(curve.isSpike(high + 5, low - 5));
    }
}
