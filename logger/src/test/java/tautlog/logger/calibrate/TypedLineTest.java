package tautlog.logger.calibrate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import org.junit.jupiter.api.Test;
import tautlog.quantity.ForceUnit;

class TypedLineTest {
    private static TypedLine read(String line) {
        return TypedLine.read(line, ForceUnit.KN);
    }

    @Test
    void readsLoadUnitDirectionAndRun() {
        assertEquals(new TypedLine.Load("10", ForceUnit.KN, "", ""), read("10"));
        assertEquals(new TypedLine.Load("12.50", ForceUnit.LBF, "up", "2"), read(" 12.50  lbf UP 2"));
        assertEquals(new TypedLine.Load("0", ForceUnit.KN, "down", ""), read("0 down"));
        assertEquals(new TypedLine.Load("0", ForceUnit.KN, "", "second"), read("0 second"));
    }

    @Test
    void readsTheWordsAndNothing() {
        assertEquals(new TypedLine.Shunt(), read("shunt"));
        assertEquals(new TypedLine.Done(), read("done"));
        assertEquals(new TypedLine.Nothing(), read(""));
        assertEquals(new TypedLine.Nothing(), read("# a remark"));
    }

    @Test
    void guessesNoLoad() {
        for (String line : new String[] {"ten", "-5", "12,5", "1e3", "10 kN up 1 more", "10 kN up a,b", "10kN"}) {
            assertInstanceOf(TypedLine.Unclear.class, read(line), line);
        }
    }
}
