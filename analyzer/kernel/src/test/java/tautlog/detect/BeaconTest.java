package tautlog.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import tautlog.fixtures.Outings;
import tautlog.fixtures.Rigs;
import tautlog.rig.Hookup;
import tautlog.rig.Limit;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Evidence;

/** Levels: {@code firmware-notes/wire.md}, BEACON. Limit 10 kN, full scale 50,000 counts, 1 N a count. */
class BeaconTest {
    private static final Hookup STRONG = Rigs.hookup("strong", "10000");
    private static final Hookup VAGUE = new Hookup(
            "vague", false, STRONG.selector(), STRONG.items(), new Limit(new BigDecimal("90000"), true, "choker"));
    private static final Rig RIG = Rigs.of("40000", List.of(STRONG, VAGUE));
    private final Beacon beacon = new Beacon(Outings.instrument(100, 50_000, 1), RIG, Calibration.of("0", "1"));

    private int level(int flags, int... counts) {
        return beacon.level(flags, counts, 0, counts.length);
    }

    @Test
    void isCautionFromFourFifthsOfTheLimitAndOverBeyondIt() {
        assertEquals(Beacon.CLEAR, level(0, 0, 7_999));
        assertEquals(Beacon.CAUTION, level(0, 8_000, 0));
        assertEquals(Beacon.CAUTION, level(0, 10_000));
        assertEquals(Beacon.OVER_LIMIT, level(0, 0, 10_001, 0));
    }

    @Test
    void isAFaultWhenTheSensorSaysNothingOrOnlyABound() {
        assertEquals(Beacon.FAULT, level(Evidence.FLAG_OPEN_BRIDGE, 20_000));
        assertEquals(Beacon.FAULT, level(0, -50_001));
        assertEquals(Beacon.FAULT, level(Evidence.FLAG_END_STOP, 0));
        assertEquals(Beacon.OVER_LIMIT, level(Evidence.FLAG_END_STOP, 50_000), "over goes before fault");
    }

    /** The curve's top: u = 1/(4 · 1e-5) = 25,000 counts, T = 50 kN; so 4 kN are 3,840 counts. */
    @Test
    void isAFaultFromACurvesTopOnUnlessOverTheLimit() {
        Calibration curve = new Calibration(BigDecimal.ZERO, BigDecimal.ONE, new BigDecimal("-1e-5"));
        Rig strong = Rigs.of("40000", List.of(Rigs.hookup("strong", "60000")));
        Beacon high = new Beacon(Outings.instrument(100, 50_000, 1), strong, curve);

        assertEquals(Beacon.CLEAR, high.level(0, new int[] {3_840}, 0, 1));
        assertEquals(Beacon.CAUTION, high.level(0, new int[] {24_999}, 0, 1), "48 kN are four fifths of 60");
        assertEquals(Beacon.FAULT, high.level(0, new int[] {25_000}, 0, 1));
        Beacon low = new Beacon(Outings.instrument(100, 50_000, 1), RIG, curve);
        assertEquals(Beacon.OVER_LIMIT, low.level(0, new int[] {25_000}, 0, 1), "over goes before fault");
    }

    @Test
    void isNeverClearWhenTheLimitIsOnlyAtMost() {
        beacon.hookup("vague");
        assertEquals(Beacon.CAUTION, level(0, 0));
    }

    @Test
    void takesTheLowestLimitForAHookupThatTheRigDoesNotKnow() {
        beacon.hookup("vague");
        beacon.hookup("nobody knows");
        assertEquals(Beacon.OVER_LIMIT, level(0, 10_001));
    }
}
