package tautlog.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import tautlog.quantity.Density;
import tautlog.quantity.Length;

class HaulTest {
    private static final double GRAVITY = 9.80665;

    /** A log of exactly one cubic metre that weighs a tonne. */
    private static GreenLog tonne() {
        double centimetres = 100 * Math.sqrt(4 / Math.PI);
        return new GreenLog(
                GreenDensity.written(Density.parse("1000 kg/m3")),
                Length.parse("1 m"),
                new Diameters.Middle(Length.parse(String.format(java.util.Locale.ROOT, "%.12f cm", centimetres))));
    }

    private static Haul haul(double frictionLow, double frictionHigh, double slopeLow, double slopeHigh) {
        return new Haul(
                tonne(),
                Friction.written(new Interval(frictionLow, frictionHigh)),
                new Slope(new Interval(slopeLow, slopeHigh), false));
    }

    /** What {@code metres} and percent make of a plain sum: the formula once more, with nothing of ours. */
    private static double pull(double kilograms, double friction, double degrees) {
        double slope = degrees * Math.PI / 180;
        return kilograms * GRAVITY * (friction * Math.cos(slope) + Math.sin(slope));
    }

    @Test
    void theWeightIsAFifthLessToAFifthMore() {
        assertEquals(1000, tonne().kilograms(), 1e-6);
        assertEquals(800 * GRAVITY, tonne().weightNewtons().low(), 1e-5);
        assertEquals(1200 * GRAVITY, tonne().weightNewtons().high(), 1e-5);
    }

    /** 16 ft, 12/10 in of red maple without bark, Smalian: 10.647 ft³ at 50 lb/ft³ are 532 lb, 241 kg. */
    @Test
    void aMapleLogWeighsWhatTheWorkedExampleSays() {
        GreenLog log = new GreenLog(
                GreenDensity.written(Density.parse("50 lb/ft3")),
                Length.parse("16 ft"),
                new Diameters.Ends(Length.parse("12 in"), Length.parse("10 in")));

        assertEquals(241, log.kilograms(), 0.5);
        assertEquals(532, log.kilograms() / 0.45359237, 0.5);
    }

    @Test
    void onLevelGroundThePullIsFrictionTimesWeight() {
        Interval pull = haul(0.5, 0.8, 0, 0).pullNewtons();

        assertEquals(0.5 * 800 * GRAVITY, pull.low(), 1e-5);
        assertEquals(0.8 * 1200 * GRAVITY, pull.high(), 1e-5);
    }

    /** The sine of 15° is 0.2588; an army rule has degrees / 60, 0.25. */
    @Test
    void theSlopesPartIsTheSine() {
        double grade = Haul.pullPerWeight(0.5, 15) - 0.5 * Math.cos(Math.toRadians(15));

        assertEquals(0.2588, grade, 5e-5);
        assertEquals(15 / 60.0, grade, 0.01);
    }

    /** Grade resistance: 20 lb a short ton, 98.07 N a tonne, for each percent of a small grade. */
    @Test
    void aSmallGradeAddsTheRuleOfThumbsTwentyPoundsATonForEachPercent() {
        double onePercent = Math.toDegrees(Math.atan(0.01));
        double added = Haul.pullPerWeight(0.5, onePercent) - Haul.pullPerWeight(0.5, 0);

        assertEquals(20.0 / 2000, added, 3e-5);
        assertEquals(98.07, added * 1000 * GRAVITY, 0.3);
    }

    @Property(tries = 500, edgeCases = EdgeCasesMode.NONE)
    void theIntervalHoldsEveryPointOfItsBox(
            @ForAll @DoubleRange(min = 0.05, max = 1.5) double friction,
            @ForAll @DoubleRange(max = 0.5) double moreFriction,
            @ForAll @DoubleRange(min = -60, max = 40) double slope,
            @ForAll @DoubleRange(max = 20) double moreSlope,
            @ForAll @DoubleRange(max = 1) double f,
            @ForAll @DoubleRange(max = 1) double s,
            @ForAll @DoubleRange(min = 800, max = 1200) double kilograms) {
        Haul haul = haul(friction, friction + moreFriction, slope, slope + moreSlope);

        double point = pull(kilograms, friction + f * moreFriction, slope + s * moreSlope);

        assertTrue(haul.pullNewtons().low() <= point + 1e-4, haul.pullNewtons() + " holds " + point);
        assertTrue(haul.pullNewtons().high() >= point - 1e-4, haul.pullNewtons() + " holds " + point);
        assertTrue(point > 0 || haul.mayRun(), "may run");
        assertTrue(point <= 0 || !haul.runs(), "does not surely run");
    }

    /** With much friction the pull is greatest below the steepest slope of the interval: 1 / tan 50° is 0.839. */
    @Test
    void theTopOfTheCurveInsideTheSlopesIntervalCounts() {
        double friction = 1 / Math.tan(Math.toRadians(50));

        Interval pull = haul(friction, friction, 40, 60).pullNewtons();

        assertEquals(pull(1200, friction, 50), pull.high(), 1e-4);
        assertTrue(pull.high() > pull(1200, friction, 40));
        assertTrue(pull.high() > pull(1200, friction, 60));
    }

    @Property(tries = 300, edgeCases = EdgeCasesMode.NONE)
    void aWiderBandOfFrictionOrSlopeNeverNarrowsTheInterval(
            @ForAll @DoubleRange(min = 0.1, max = 1) double friction,
            @ForAll @DoubleRange(min = -50, max = 50) double slope,
            @ForAll @DoubleRange(max = 0.05) double more,
            @ForAll @DoubleRange(max = 10) double steeper) {
        Interval narrow = haul(friction, friction, slope, slope).pullNewtons();
        Interval wide = haul(friction - more, friction + more, slope - steeper, slope + steeper)
                .pullNewtons();

        assertTrue(wide.low() <= narrow.low() + 1e-9 && wide.high() >= narrow.high() - 1e-9, narrow + " in " + wide);
    }

    @Test
    void downhillALogRunsByItselfFromWhereTheSlopeIsSteeperThanItsFriction() {
        // tan 15° is 0.268
        assertFalse(haul(0.3, 0.5, -15, -15).mayRun());
        assertTrue(haul(0.25, 0.5, -15, -15).mayRun());
        assertFalse(haul(0.25, 0.5, -15, -15).runs());
        assertTrue(haul(0.2, 0.25, -15, -15).runs());
    }

    @Test
    void anIntervalKnowsNoWrongEnds() {
        assertThrows(IllegalArgumentException.class, () -> new Interval(2, 1));
        assertThrows(IllegalArgumentException.class, () -> new Interval(0, Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> new Slope(new Interval(0, 61), false));
    }
}
