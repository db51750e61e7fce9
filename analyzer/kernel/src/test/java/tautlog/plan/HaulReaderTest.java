package tautlog.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tautlog.quantity.Length;

class HaulReaderTest {
    private static final String LOG = "Norway spruce, 12 m, 40/28 cm";

    private static Haul read(String log, String ground, String friction, String slope, String plusMinus)
            throws PlanException {
        Flaws flaws = new Flaws();
        Optional<Haul> haul = HaulReader.read(
                new HaulText(log, given(ground), given(friction), given(slope), given(plusMinus)), flaws);
        flaws.throwIfAny();
        return haul.orElseThrow();
    }

    private static Optional<String> given(String text) {
        return text.isEmpty() ? Optional.empty() : Optional.of(text);
    }

    private static String problems(String log, String ground, String friction, String slope, String plusMinus) {
        return assertThrows(PlanException.class, () -> read(log, ground, friction, slope, plusMinus))
                .getMessage();
    }

    private static void assertSays(String message, String part) {
        assertTrue(message.contains(part), message);
    }

    @Test
    void aLogIsSpeciesLengthAndEnds() throws PlanException {
        GreenLog log = read(LOG, "flat", "", "", "").log();

        // 42.0 lb/ft3 with bark
        assertEquals(672.8, log.density().kilogramsPerCubicMetre(), 0.05);
        assertEquals("Norway spruce (Picea abies)", log.density().words());
        assertEquals(Length.parse("12 m").millimetres(), log.length().millimetres());
        assertEquals(new Diameters.Ends(Length.parse("40 cm"), Length.parse("28 cm")), log.diameters());
    }

    /** It was said once for each diameter. */
    @Test
    void aUnitThatIsNoneIsSaidOnceForAllDiameters() {
        String wrong = problems("Norway spruce, 12 m, 40/35/28 stones", "", "", "", "");

        assertEquals(1, wrong.split("log: ", -1).length - 1, wrong);
        assertSays(
                wrong,
                "log: diameters: \"40/35/28 stones\" are no lengths.\n  The unit \"stones\" is not known here. Allowed");
    }

    @Test
    void threeDiametersAreNewtonsAndTheMiddleIsHubers() throws PlanException {
        assertEquals(
                "Newton",
                read("red maple, 5 m, 40 / 35/28.5 cm", "", "", "", "")
                        .log()
                        .diameters()
                        .formula());
        assertEquals(
                "Huber",
                read("RED MAPLE,16 ft,mid 12 in", "", "", "", "")
                        .log()
                        .diameters()
                        .formula());
        assertEquals(
                "Smalian",
                read("900 kg/m3, 5 m, 400/300 mm", "", "", "", "")
                        .log()
                        .diameters()
                        .formula());
    }

    @Test
    void aDensityStandsInPlaceOfASpecies() throws PlanException {
        assertEquals(
                950,
                read("950 kg/m3, 5 m, mid 30 cm", "", "", "", "")
                        .log()
                        .density()
                        .kilogramsPerCubicMetre());
    }

    @ParameterizedTest
    @CsvSource({"flat, 0.5, 0.8", "front-raised, 0.3, 0.5", "whole-tree, 0.6, 1.0", "snow, 0.2, 0.4"})
    void aGroundIsABandOfFriction(String ground, double low, double high) throws PlanException {
        Friction friction = read(LOG, ground, "", "", "").friction();

        assertEquals(new Interval(low, high), friction.coefficient());
        assertFalse(friction.isAssumed());
    }

    @Test
    void withoutAGroundTheWidestBandIsAssumed() throws PlanException {
        Friction friction = read(LOG, "", "", "", "").friction();

        assertEquals(new Interval(0.2, 1.0), friction.coefficient());
        assertTrue(friction.isAssumed());
        assertTrue(read(LOG, "", "", "", "").slope().isAssumed());
    }

    @Test
    void frictionIsTwoNumbersOrOne() throws PlanException {
        assertEquals(
                new Interval(0.4, 0.7),
                read(LOG, "", "0.4..0.7", "", "").friction().coefficient());
        assertEquals(
                new Interval(0.5, 0.5), read(LOG, "", "0.5", "", "").friction().coefficient());
    }

    @Test
    void aSlopeIsAnAngleOrAGradeAndMayBeOff() throws PlanException {
        assertEquals(
                new Interval(15, 15), read(LOG, "", "", "15 deg", "").slope().degrees());
        assertEquals(
                new Interval(-20, -10),
                read(LOG, "", "", "-15°", "5 deg").slope().degrees());
        // tan 14.036° is 0.25
        assertEquals(14.0362, read(LOG, "", "", "25 %", "").slope().degrees().low(), 5e-5);
        Interval grade = read(LOG, "", "", "25%", "10 %").slope().degrees();
        assertEquals(Math.toDegrees(Math.atan(0.15)), grade.low(), 1e-12);
        assertEquals(Math.toDegrees(Math.atan(0.35)), grade.high(), 1e-12);
    }

    @Test
    void allProblemsAreToldAtOnce() {
        String all = problems("spruce, 12 furlong, 28/40 cm", "ice", "", "steep", "");

        assertSays(all, "log: \"spruce\" is no species that is known here.\n  Nearest: red spruce, white spruce");
        assertSays(all, "Or write its density in place of the species (\"950 kg/m3\", \"59 lb/ft3\")");
        assertSays(all, "log: length: \"12 furlong\" is not a length.");
        assertSays(all, "units mm, cm, m, in, ft");
        assertSays(all, "log: diameters: \"28/40 cm\" grow.\n  The large end comes first.");
        assertSays(all, "ground: \"ice\" is no ground that is known here.");
        assertSays(all, "slope: \"steep\" is no slope.");
    }

    @Test
    void anUnknownTreeWithNothingInCommonGetsTheWholeList() {
        assertSays(problems("xylophone, 5 m, mid 30 cm", "", "", "", ""), "Known: red maple, sugar maple");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "Norway spruce",
                "Norway spruce, 12 m",
                "Norway spruce, 12,5 m, 40/28 cm",
                "Norway spruce, 12 m, 40",
                "Norway spruce, 12 m, 40 cm",
                "Norway spruce, 12 m, 40/28",
                "Norway spruce, 12 m, 40/28/20/10 cm",
                "Norway spruce, 12 m, 40/0 cm",
                "Norway spruce, 12 m, -40/28 cm",
                "Norway spruce, 12 m, 40//28 cm",
                "Norway spruce, 12 m, mid",
                "Norway spruce, 12 m, mid 40/28 cm",
                "Norway spruce, 12 mm, 40/28 cm",
                "Norway spruce, 12 m, 40/28 m",
                "Norway spruce, 0 m, 40/28 cm",
                "-950 kg/m3, 12 m, 40/28 cm",
                "950, 12 m, 40/28 cm",
                "950 kg/m3, 12 m, 40/28 cm, second log"
            })
    void whatIsNoLogIsRefused(String log) {
        assertSays(problems(log, "", "", "", ""), "log: ");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "0..0.5", "0.7..0.4", "0.4..2.1", "0,4..0,7", "-0.1", "NaN", "0.4-0.7", "1e-3"})
    void whatIsNoFrictionIsRefused(String friction) {
        Flaws flaws = new Flaws();
        HaulReader.read(
                new HaulText(LOG, Optional.empty(), Optional.of(friction), Optional.empty(), Optional.empty()), flaws);

        assertSays(assertThrows(PlanException.class, flaws::throwIfAny).getMessage(), "friction: ");
    }

    @Test
    void aGroundAndAFrictionAreOneTooMany() {
        assertSays(problems(LOG, "flat", "0.5", "", ""), "friction: the ground is written twice");
    }

    @Test
    void slopesThatContradictThemselvesAreRefused() {
        assertSays(problems(LOG, "", "", "61 deg", ""), "slope: \"61 deg\", with what it may be off, is too steep");
        assertSays(problems(LOG, "", "", "174 %", ""), "is too steep");
        assertSays(problems(LOG, "", "", "-58 deg", "5 deg"), "is too steep");
        assertSays(problems(LOG, "", "", "15 deg", "5 %"), "slope-plus-minus: it has another unit");
        assertSays(problems(LOG, "", "", "15 deg", "-5 deg"), "slope-plus-minus: it is below 0");
        assertSays(problems(LOG, "", "", "", "5 deg"), "slope-plus-minus: there is no slope");
        assertSays(problems(LOG, "", "", "15", ""), "slope: \"15\" is no slope");
    }

    @Test
    void aTerminalsEscapeIsNotRepeated() {
        assertFalse(problems("\u001B[31mtree, 5 m, mid 30 cm", "", "", "", "").contains("\u001B"));
    }
}
