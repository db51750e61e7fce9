package tautlog.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.BigRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;

class AngleTest {
    private static Angle degrees(String decimal) {
        return new Angle(new BigDecimal(decimal));
    }

    @Test
    void theCosineIsExactWhereItIsADecimal() {
        assertEquals(0, BigDecimal.ONE.compareTo(degrees("0").cosine()));
        assertEquals(0, new BigDecimal("0.5").compareTo(degrees("60").cosine()));
        assertEquals(0, BigDecimal.ZERO.compareTo(degrees("90").cosine()));
        assertEquals(0, new BigDecimal("-1").compareTo(degrees("180").cosine()));
    }

    @Property(tries = 200)
    void theCosineIsThatOfDoubleArithmeticToItsDigits(
            @ForAll @BigRange(min = "0", max = "180") @Scale(4) BigDecimal degrees) {
        double cosine = new Angle(degrees).cosine().doubleValue();

        // the double's way rounds the radians twice: up to 2 · 2^-53 · π, and the cosine once more
        assertEquals(Math.cos(Math.toRadians(degrees.doubleValue())), cosine, 9e-16);
    }

    @Property(tries = 100)
    void theCosineOfTheDoubleAngleFollowsToThirtyDigits(
            @ForAll @BigRange(min = "0", max = "90") @Scale(3) BigDecimal degrees) {
        BigDecimal once = new Angle(degrees).cosine();
        BigDecimal twice = new Angle(degrees.multiply(BigDecimal.valueOf(2))).cosine();

        // cos 2x = 2 cos² x − 1, independent of how the series is cut
        BigDecimal expected =
                once.multiply(once).multiply(BigDecimal.valueOf(2)).subtract(BigDecimal.ONE);
        assertEquals(0, expected.subtract(twice).movePointRight(32).intValue());
    }

    @Test
    void anAngleOutsideAHalfTurnIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> degrees("-1"));
        assertThrows(IllegalArgumentException.class, () -> degrees("180.1"));
    }
}
