package tautlog.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LengthTest {
    /** An inch is 25.4 mm, a foot 304.8 mm (1959). */
    @ParameterizedTest
    @CsvSource({
        "11 mm, 11",
        "40 cm, 400",
        "0.5 cm, 5",
        "0.18 m, 180",
        "5/16 in, 7.9375",
        "1 3/8 in, 34.925",
        "1-3/8 in, 34.925",
        "13/64 in, 5.159375",
        "2 in, 50.8",
        "0.5 in, 12.7",
        "2 ft, 609.6"
    })
    void readsEveryUnitAndFractionsExactly(String text, String millimetres) {
        assertEquals(0, new BigDecimal(millimetres).compareTo(Length.parse(text).millimetres()));
    }

    @Test
    void whatIsNoLengthIsRefused() {
        for (String text : List.of(
                "", "5/16", "5/0 in", "1/3 in", "0/16 in", "5/16 mm", "11", "0 mm", "3 km", "3 cm3", "11,5 mm")) {
            assertThrows(QuantityException.class, () -> Length.parse(text), text);
        }
    }

    @Property(tries = 200)
    void aFractionIsItsQuotient(
            @ForAll @IntRange(min = 0, max = 20) int whole, @ForAll @IntRange(min = 1, max = 63) int part) {
        String text = (whole == 0 ? "" : whole + " ") + part + "/64 in";

        Length length = Length.parse(text);

        assertEquals(
                0,
                new BigDecimal(whole * 64 + part)
                        .multiply(new BigDecimal("25.4"))
                        .compareTo(length.millimetres().multiply(new BigDecimal("64"))));
        assertTrue(length.sameAs(Length.parse(length.toString())));
    }
}
