package tautlog.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import tautlog.fixtures.Outings;
import tautlog.fixtures.Rigs;
import tautlog.sample.Calibration;

class LineCalibrationTest {
    private static final String CHAIN = RigText.gear("c", "chain", "wll = \"20 kN\"");
    private static final Calibration CELL = Calibration.of("120.5", "0.02");

    private static Calibration at(String place) {
        Rig rig = Rigs.parsed(RigText.of(CHAIN + "[cell]\n" + place + "\n", "{ gear = \"c\" }"));
        return LineCalibration.of(CELL, rig);
    }

    @Test
    void aCellInTheLineOrAtItsDeadEndCarriesTheTensionOnce() {
        Rig withoutWord = Rigs.parsed(RigText.of(CHAIN, "{ gear = \"c\" }"));

        assertSame(CELL, LineCalibration.of(CELL, withoutWord));
        assertSame(CELL, at("at = \"line\""));
        assertSame(CELL, at("at = \"dead-end\""));
    }

    /** The published multiples of a block by its angle, which that table truncates in places: 0.02. */
    @Test
    void aCellAtAFairleadOrBlockIsDividedByThePublishedMultipleOfItsAngle() {
        for (CSVRecord row : ReferenceTable.rows("block_load_factor")) {
            double angle = Double.parseDouble(row.get("angle_between_lines_deg"));
            double multiple = Double.parseDouble(row.get("published_2dp"));
            for (String place : new String[] {"fairlead", "block"}) {
                if (angle <= 150) { // a rig takes no more: there a small error of the angle is a large one of the force
                    // when
                    Calibration line = at("at = \"" + place + "\"\nangle_between_lines_deg = " + angle);

                    // then
                    double found = 0.02 / line.newtonsPerCount().doubleValue();
                    assertEquals(multiple, found, 0.02, place + " at " + angle + " degrees");
                }
            }
        }
    }

    @Test
    void theCountOfTheUnloadedCellStays() {
        Calibration line = at("at = \"fairlead\"\nangle_between_lines_deg = 90");

        assertEquals(new BigDecimal("120.5"), line.zeroCounts());
        assertEquals(0.02 / Math.sqrt(2), line.newtonsPerCount().doubleValue(), 1e-17);
    }

    @Test
    void aThresholdIsReachedAtTheCountAtWhichTheCellCarriesItsMultiple() {
        // 2 cos 60° = 1 and 2 cos 0° = 2, both exactly: 20 kN are 1 000 000 or 2 000 000 counts above 120.5
        BigDecimal limit = new BigDecimal("20000");

        assertEquals(
                1_000_121, at("at = \"block\"\nangle_between_lines_deg = 120").leastCountsAtOrAbove(limit));
        assertEquals(
                2_000_121, at("at = \"block\"\nangle_between_lines_deg = 0").leastCountsAtOrAbove(limit));
    }

    @Test
    void theCellsOwnForceAtItsCapacityIsTheTensionThatTheRigSaysTimesTheMultiple() {
        // given: 60 kN of capacity at 90 degrees, which is a tension of 60 kN / √2
        Rig rig = Rigs.parsed(RigText.of(
                CHAIN + "[cell]\nat = \"fairlead\"\ncapacity = \"60 kN\"\nangle_between_lines_deg = 90\n",
                "{ gear = \"c\" }"));
        int counts = CELL.leastCountsAtOrAbove(new BigDecimal("60000"));

        // then: one count is 0.0141 N of tension
        double tension = LineCalibration.of(CELL, rig).newtons(counts);
        assertEquals(rig.cellCapacityNewtons().orElseThrow().doubleValue(), tension, 0.015);
    }

    private static Rig carrying(String capacity) {
        return new Rig(
                "winch",
                new BigDecimal("10000"),
                List.of(Rigs.hookup("straight", "8000")),
                DetectSettings.DEFAULTS,
                Optional.ofNullable(capacity.isEmpty() ? null : new BigDecimal(capacity)),
                Optional.empty());
    }

    private static Optional<String> misfit(String curvature, int fullScale, String capacity) {
        Calibration line = new Calibration(BigDecimal.ZERO, BigDecimal.ONE, new BigDecimal(curvature));
        return LineCalibration.misfit(line, Outings.instrument(100, fullScale, 1), carrying(capacity));
    }

    /** At 1 N a count and ±1e-5 per newton the curve turns at 1/(4 · 1e-5) = 25,000 counts, 50 kN. */
    @Test
    void aCurveThatTurnsWithinWhatConverterAndCellCanGiveDoesNotFit() {
        assertEquals(Optional.empty(), misfit("-1e-5", 24_999, ""));
        assertTrue(misfit("-1e-5", 25_000, "").orElseThrow().contains("at 25000 counts"));
        assertEquals(Optional.empty(), misfit("-1e-5", 25_000, "49990"));
        assertTrue(misfit("-1e-5", 25_000, "50000").isPresent());

        assertEquals(Optional.empty(), misfit("1e-5", 24_998, ""));
        assertTrue(misfit("1e-5", 24_999, "").orElseThrow().contains("at -25000 counts"));
        assertEquals(Optional.empty(), misfit("1e-5", 8_388_607, "49990"));
        assertTrue(misfit("1e-5", 8_388_607, "50000").isPresent());

        assertEquals(Optional.empty(), misfit("0", 8_388_607, ""));
    }
}
