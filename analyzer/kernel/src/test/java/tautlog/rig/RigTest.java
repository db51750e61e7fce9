package tautlog.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tautlog.fixtures.Rigs;
import tautlog.quantity.ForceUnit;

class RigTest {
    private static Rig example() {
        return Rigs.parsed(Rigs.exampleText());
    }

    @Test
    void readsWhatTheExampleSaysOfWinchCellAndShaft() {
        Rig rig = example();

        assertEquals("upper-landing", rig.winch());
        assertEquals(new BigDecimal("40000"), rig.ratedPullNewtons());
        assertEquals(ForceUnit.KN, rig.units());
        assertEquals(Optional.of(new BigDecimal("60000")), rig.cellCapacityNewtons());
        assertEquals(CellPlace.LINE, rig.cell().orElseThrow().at());
        assertEquals(Optional.of(ShaftEnd.WINCH), rig.sensorAt());
        assertEquals(new Opening(new BigDecimal("412"), new BigDecimal("160.5"), 2100), rig.opening());
        assertEquals(DetectSettings.DEFAULTS, rig.detect());
        assertEquals(
                List.of("choker", "strap-1", "block-1", "rope"),
                rig.gear().stream().map(Gear::id).toList());
        assertEquals(6, rig.gear().get(0).count());
    }

    @Test
    void theStraightHookupIsLimitedByItsChoker() {
        Limit limit = example().hookup("straight").orElseThrow().limit();

        // 49 CFR 393.108: grade 70, 5/16 in, 4700 lb; three quarters of it when choked
        assertEquals(0, new BigDecimal("15679.9811937932625").compareTo(limit.newtons()));
        assertEquals("choker", limit.governing());
        assertFalse(limit.isAtMost());
    }

    @Test
    void roundTheCornerTheStrapGoverns() {
        Limit limit = example().hookup("round-the-corner").orElseThrow().limit();

        // 20 kN / (2 cos 30°) = 20 000 / √3
        BigDecimal expected = new BigDecimal("20000")
                .divide(new BigDecimal("3").sqrt(java.math.MathContext.DECIMAL128), java.math.MathContext.DECIMAL128);
        assertEquals(
                0, expected.subtract(limit.newtons()).abs().movePointRight(28).intValue());
        assertEquals("strap-1", limit.governing());
    }

    @Test
    void theWinchLineMayCarryHalfOfWhatItsEndKeeps() {
        LoadedItem rope = example().hookup("straight").orElseThrow().items().get(0);

        // EN 12385-4: 0.356 · 11² · 1960 = 84 429 N (computed, 84.43 kN); clips keep 0.8 of it
        assertEquals(
                0, new BigDecimal("84428.96").multiply(new BigDecimal("0.4")).compareTo(rope.allowedNewtons()));
        assertEquals(
                0,
                new BigDecimal("84428.96")
                        .multiply(new BigDecimal("0.8"))
                        .compareTo(rope.breakingNewtons().orElseThrow()));
        assertEquals("winch-line", rope.as());
    }

    @Test
    void theCellIsTheLastItemOfEveryHookup() {
        for (Hookup hookup : example().hookups()) {
            LoadedItem last = hookup.items().get(hookup.items().size() - 1);

            assertEquals("cell", last.gear());
            assertEquals(new BigDecimal("60000"), last.allowedNewtons());
        }
    }
}
