package tautlog.desk.analysis;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import tautlog.fixtures.Rigs;

class BlindSpotsTest {
    private static String ofACellAt(String place) {
        String rig = """
                schema = 1
                units = "kN"
                [winch]
                name = "upper"
                rated_pull = "40 kN"
                [cell]
                at = "%s"
                [[gear]]
                id = "choker"
                kind = "chain"
                wll = "20 kN"
                [[hookup]]
                id = "straight"
                default = true
                items = [ { gear = "choker" } ]
                """.formatted(place);
        return String.join(" ", new BlindSpots(List.of(Rigs.parsed(rig))).sentences());
    }

    @Test
    void saysThatTheSheavesFrictionIsInNoTensionOfACellAtTheDeadEnd() {
        String deadEnd = ofACellAt("dead-end");

        assertTrue(deadEnd.contains("blind to pulls on a single line."), deadEnd);
        assertTrue(deadEnd.contains("No tension and no interval here holds it"), deadEnd);
        assertFalse(ofACellAt("line").contains("sheave"));
    }
}
