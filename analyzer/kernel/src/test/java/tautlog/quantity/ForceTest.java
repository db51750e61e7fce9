package tautlog.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.BigRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ForceTest {
    /** Standard gravity 9.80665 m/s² (CGPM 1901), pound 0.45359237 kg (1959): lbf = 0.45359237 · 9.80665 N. */
    @ParameterizedTest
    @CsvSource({
        "1 N, 1",
        "12.5 kN, 12500",
        "40kN, 40000",
        "3 daN, 30",
        "1 kgf, 9.80665",
        "2 kg, 19.6133",
        "4 t, 39226.6",
        "4700 lbf, 20906.64159172435",
        "1 lb, 4.4482216152605"
    })
    void readsEveryUnitExactly(String text, String newtons) {
        assertEquals(0, new BigDecimal(newtons).compareTo(Force.parse(text).newtons()));
    }

    @Test
    void aPoundForceIsThePoundTimesStandardGravity() {
        BigDecimal expected = new BigDecimal("0.45359237").multiply(new BigDecimal("9.80665"));

        assertEquals(0, expected.compareTo(ForceUnit.LBF.newtons()));
    }

    @Test
    void aCommaIsAnsweredWithThePoint() {
        var wrong = assertThrows(QuantityException.class, () -> Force.parse("12,5 kN"));

        assertEquals("\"12,5 kN\" is not a force", wrong.found());
        assertEquals(
                "Write the number with a point (\"12.5 kN\"). Allowed: above 0; units N, kN, daN, kgf, kg, t, lbf, lb.",
                wrong.allowed());
    }

    @Test
    void whatIsNoForceIsRefused() {
        for (String text : List.of(
                "",
                " ",
                "kN",
                "12.5",
                "0 kN",
                "-1 kN",
                "1e3 N",
                "1.2.3 N",
                ".5 N",
                "5. N",
                "5 KN",
                "5 kN m",
                "NaN N",
                "5 5 N",
                "9999999999999999 N")) {
            assertThrows(QuantityException.class, () -> Force.parse(text), text);
        }
    }

    @ParameterizedTest
    @CsvSource({
        "15679.981, KN, 15.7 kN",
        "9999.9, KN, 10.00 kN",
        "1500, KN, 1.50 kN",
        "15679.981, DAN, 1568 daN",
        "15679.981, KGF, 1599 kgf",
        "15679.981, T, 1.599 t",
        "15679.981, LBF, 3525 lbf",
        "-204, KN, -0.20 kN",
        "0, LBF, 0 lbf",
        "123456, T, 12.59 t"
    })
    void isShownWithTheDigitsThatMeanSomething(String newtons, ForceUnit unit, String shown) {
        assertEquals(shown, unit.format(new BigDecimal(newtons)));
        assertEquals(shown, unit.format(Double.parseDouble(newtons)));
    }

    @Property(tries = 300)
    void whatIsWrittenInNewtonsIsReadBack(
            @ForAll @BigRange(min = "0.000001", max = "100000000") @Scale(6) BigDecimal newtons) {
        Force force = new Force(newtons);

        assertEquals(force, Force.parse(force.toString()));
    }

    @Property(tries = 300)
    void theScreenIsOffByHalfALastDigitAtMost(
            @ForAll @BigRange(min = "0.001", max = "10000000") @Scale(3) BigDecimal newtons, @ForAll ForceUnit unit) {
        String shown = unit.number(newtons);

        BigDecimal halfStep = BigDecimal.ONE
                .movePointLeft(Math.max(0, new BigDecimal(shown).scale()))
                .divide(BigDecimal.valueOf(2))
                .multiply(unit.newtons());
        BigDecimal off =
                new BigDecimal(shown).multiply(unit.newtons()).subtract(newtons).abs();
        assertEquals(false, off.compareTo(halfStep) > 0, shown + " " + unit);
    }

    @Property(tries = 1000)
    void noTextThrowsAnythingElse(@ForAll String text) {
        try {
            Force.parse(text);
        } catch (QuantityException refused) {
            assertEquals(false, refused.allowed().isEmpty());
        }
    }
}
