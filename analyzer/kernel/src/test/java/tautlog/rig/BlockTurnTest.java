package tautlog.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import tautlog.fixtures.Rigs;
import tautlog.quantity.Angle;

class BlockTurnTest {
    private static final String GEAR = RigText.gear("b", "block", "wll = \"80 kN\"")
            + RigText.gear("s", "web", "wll = \"20 kN\"")
            + RigText.gear("c", "chain", "wll = \"16 kN\"");

    private static Hookup hookup(String angle) {
        return RigText.hookup(
                GEAR,
                "{ gear = \"b\", as = \"block\"" + angle
                        + " }, { gear = \"s\", as = \"block-strap\", hitch = \"basket\"" + angle
                        + " }, { gear = \"c\" }");
    }

    private static Angle angle(int degrees) {
        return new Angle(BigDecimal.valueOf(degrees));
    }

    @Test
    void blockAndStrapCarryTheFormulasMultipleAtEveryPublishedAngle() {
        for (CSVRecord row : ReferenceTable.rows("block_load_factor")) {
            Angle at = new Angle(new BigDecimal(row.get("angle_between_lines_deg")));
            if (BlockAngle.isTooWide(at)) {
                continue;
            }
            Hookup turned = hookup(", angle_between_lines_deg = 60").withBlockAngle(at);

            double factor = Double.parseDouble(row.get("factor_exact_2cos_half"));
            assertEquals(factor, turned.items().get(0).multiple().doubleValue(), 5e-10);
            assertEquals(factor, turned.items().get(1).multiple().doubleValue(), 5e-10);
            assertEquals(BigDecimal.ONE, turned.items().get(2).multiple());
        }
    }

    @Property(tries = 40)
    void turningIsTheSameAsWritingTheAngleInTheRig(@ForAll @IntRange(max = 150) int degrees) {
        Hookup written = hookup(", angle_between_lines_deg = " + degrees);

        assertEquals(written, hookup("").withBlockAngle(angle(degrees)));
        assertEquals(written, hookup(", turn_deg = 90").withBlockAngle(angle(degrees)));
    }

    @Test
    void theGoverningItemChangesWhereTheStrapCarriesMoreThanTheChain() {
        // 20 kN / (2 cos(a/2)) is below 16 kN when cos(a/2) > 0.625: a < 102.6°
        assertEquals("c", hookup("").withBlockAngle(angle(103)).limit().governing());
        assertEquals("s", hookup("").withBlockAngle(angle(102)).limit().governing());
    }

    @Test
    void aWiderAngleThanIsTakenIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> hookup("").withBlockAngle(angle(151)));
    }

    @Test
    void aHookupWithoutABlockStaysAsItIs() {
        Hookup straight = RigText.hookup(GEAR, "{ gear = \"c\" }");

        assertFalse(straight.turnsTheLine());
        assertSame(
                straight.items().get(0),
                straight.withBlockAngle(angle(10)).items().get(0));
    }

    @Test
    void aMovingBlockDoublesThePullAndTurnsNothing() {
        Hookup doubled = RigText.hookup(
                GEAR,
                "{ gear = \"b\", as = \"moving-block\" }, { gear = \"s\", as = \"block-strap\", hitch = \"straight\" },"
                        + " { gear = \"c\", as = \"choker\" }");

        assertEquals(0, new BigDecimal("2").compareTo(doubled.pullPerTension()));
        assertFalse(doubled.turnsTheLine());
        assertEquals(BigDecimal.ONE, hookup("").pullPerTension());
        assertTrue(hookup("").turnsTheLine());
    }

    @Test
    void theShareOfTheLineBeyondAMovingBlockIsKept() {
        String cell = "[cell]\nat = \"dead-end\"\n";
        String items =
                "{ gear = \"b\", as = \"block\", angle_between_lines_deg = 60 }, { gear = \"b\", as = \"moving-block\" }";

        Hookup hookup = Rigs.parsed(RigText.of(GEAR + cell, items)).hookups().get(0);

        // measured at the dead end: the fixed block's line carries 1 / 0.96 for each of the two sheaves at most
        double line = hookup.items().get(0).turn().orElseThrow().lineMultiple().doubleValue();
        Hookup parallel = hookup.withBlockAngle(angle(0));
        assertEquals(2 * line, parallel.items().get(0).multiple().doubleValue(), 1e-12);
        assertTrue(line > 1, "line multiple " + line);
    }
}
