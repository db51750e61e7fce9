package tautlog.desk.analysis;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tautlog.fixtures.Rigs;

class BlindSpotsTest {
    private static String ofACellAt(String place) {
        return ofACell("at = \"" + place + "\"");
    }

    private static String ofACell(String keys) {
        String rig = """
                schema = 1
                units = "kN"
                [winch]
                name = "upper"
                rated_pull = "40 kN"
                [cell]
                %s
                [[gear]]
                id = "choker"
                kind = "chain"
                wll = "20 kN"
                [[hookup]]
                id = "straight"
                default = true
                items = [ { gear = "choker" } ]
                """.formatted(keys);
        return String.join(" ", new BlindSpots(List.of(Rigs.parsed(rig))).sentences());
    }

    @Test
    void saysThatTheSheavesFrictionIsInNoTensionOfACellAtTheDeadEnd() {
        String deadEnd = ofACellAt("dead-end");

        assertTrue(deadEnd.contains("blind to pulls on a single line."), deadEnd);
        assertTrue(deadEnd.contains("No tension and no interval here holds it"), deadEnd);
        assertFalse(ofACellAt("line").contains("sheave"));
    }

    /** 2 · 1.04 / 2.04 and 2 · 1.09 / 2.09 of half the sum: firmware-notes/cell.md, Friction. */
    @ParameterizedTest
    @ValueSource(strings = {"fairlead", "block"})
    void saysThatTheDrumsSidePullsMoreThanACellAtASheaveTells(String place) {
        String sheave = ofACell("at = \"" + place + "\"\nangle_between_lines_deg = 90");

        assertTrue(sheave.contains("the drum's side of the line carries about 2 to 4.5 % more"), sheave);
        assertTrue(sheave.contains("No tension and no interval here holds it."), sheave);
        assertTrue(sheave.contains("is not written (angle_plus_minus_deg)"), sheave);
    }
}
