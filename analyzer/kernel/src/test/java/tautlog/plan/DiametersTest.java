package tautlog.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import tautlog.quantity.Length;

/**
 * Against a published worked example of the log formulas (University of Missouri, D. Larsen): logs of 10 and 12 in by 16 ft,
 * 25 and 29 cm by 5 m. It prints Smalian and the cone; Newton on a conical log is the cone. Huber's figure was computed beside it.
 */
class DiametersTest {
    private static final double CUBIC_FOOT = Math.pow(0.3048, 3);

    private static Length length(String text) {
        return Length.parse(text);
    }

    @Test
    void smalianGivesTheWorkedExamplesFigures() {
        double feet = new Diameters.Ends(length("12 in"), length("10 in")).cubicMetres(16 * 0.3048) / CUBIC_FOOT;
        double metres = new Diameters.Ends(length("29 cm"), length("25 cm")).cubicMetres(5);

        assertEquals(10.64650844, feet, 5e-9);
        assertEquals(10.647, feet, 0.001);
        assertEquals(0.28784843, metres, 5e-9);
    }

    @Test
    void newtonOnAConicalLogGivesTheWorkedExamplesCone() {
        double feet =
                new Diameters.EndsAndMiddle(length("12 in"), length("11 in"), length("10 in")).cubicMetres(16 * 0.3048)
                        / CUBIC_FOOT;
        double metres = new Diameters.EndsAndMiddle(length("29 cm"), length("27 cm"), length("25 cm")).cubicMetres(5);

        assertEquals(10.588, feet, 0.001);
        assertEquals(10.58833080, feet, 5e-9);
        assertEquals(0.28680123, metres, 5e-9);
    }

    @Test
    void huberTakesTheMiddleForTheWhole() {
        double feet = new Diameters.Middle(length("11 in")).cubicMetres(16 * 0.3048) / CUBIC_FOOT;

        assertEquals(10.55924, feet, 5e-6);
        assertEquals(0.2862776, new Diameters.Middle(length("27 cm")).cubicMetres(5), 5e-8);
    }

    @Property(tries = 200)
    void smalianOverstatesAndHuberUnderstatesALogLikeACone(
            @ForAll @IntRange(min = 4, max = 120) int smallCm, @ForAll @IntRange(min = 2, max = 60) int moreCm) {
        Length large = length(smallCm + moreCm + " cm");
        Length small = length(smallCm + " cm");
        Length middle = length((smallCm * 10 + moreCm * 5) + " mm");

        double newton = new Diameters.EndsAndMiddle(large, middle, small).cubicMetres(10);

        assertTrue(new Diameters.Ends(large, small).cubicMetres(10) > newton);
        assertTrue(new Diameters.Middle(middle).cubicMetres(10) < newton);
    }
}
