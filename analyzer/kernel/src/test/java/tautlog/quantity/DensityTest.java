package tautlog.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DensityTest {
    /** The table of green wood prints both units, kilograms rounded to whole ones. */
    @ParameterizedTest
    @CsvSource({
        "50 lb/ft3, 801",
        "55 lb/ft3, 881",
        "34 lb/ft3, 545",
        "64 lb/ft³, 1025",
        "950 kg/m3, 950",
        "950 kg/m³, 950"
    })
    void readsBothUnits(String text, double kilograms) {
        assertEquals(kilograms, Density.parse(text).kilogramsPerCubicMetre().doubleValue(), 0.5);
    }

    @Test
    void metricIsExact() {
        assertEquals(new BigDecimal("672.5"), Density.parse("672.5 kg/m3").kilogramsPerCubicMetre());
    }

    @Test
    void whatIsNoDensityIsRefused() {
        for (String text :
                List.of("", "950", "0 kg/m3", "-5 kg/m3", "950 kg", "950 kg/m4", "9,5 kg/m3", "950 kg/m33")) {
            assertThrows(QuantityException.class, () -> Density.parse(text), text);
        }
    }

    @Test
    void saysHowToWriteIt() {
        QuantityException wrong = assertThrows(QuantityException.class, () -> Density.parse("heavy"));

        assertTrue(wrong.getMessage().contains("\"950 kg/m3\""), wrong.getMessage());
    }
}
