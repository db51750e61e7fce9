package tautlog.desk.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import tautlog.calibration.CellCalibration;
import tautlog.calibration.Directions;
import tautlog.config.ConfigException;
import tautlog.desk.fixtures.SampleDay;
import tautlog.rig.Rig;

class CautionsTest {
    private static final String[] GOOD = {
        "0,4001,up,1",
        "10,24003,up,1",
        "20,43998,up,1",
        "30,64004,up,1",
        "40,83997,up,1",
        "30,64012,down,1",
        "20,44009,down,1",
        "10,24008,down,1",
        "0,4003,down,1",
        "0,4002,up,2",
        "10,23998,up,2",
        "20,44003,up,2",
        "30,63999,up,2",
        "40,84003,up,2"
    };

    private static List<String> kinds(String... rows) throws ConfigException {
        return Tables.kinds(Tables.study(Tables.kilonewtons(rows)));
    }

    private static String text(CalibrationStudy study, String kind) {
        return study.cautions().stream()
                .filter(caution -> caution.kind().equals(kind))
                .findFirst()
                .orElseThrow()
                .text();
    }

    @Test
    void saysOnlyWhatNobodyToldOfAGoodSet() throws ConfigException {
        assertEquals(List.of("reach", "reference-unknown", "time-unknown"), kinds(GOOD));
    }

    @Test
    void warnsOfFewLoadsOneWayAndOnce() throws ConfigException {
        List<String> kinds = kinds("0,4001,up,1", "10,24003,up,1", "20,43998,up,1", "30,64004,up,1");

        assertTrue(kinds.containsAll(List.of("too-few-loads", "one-way-only", "not-repeated")), kinds.toString());
    }

    @Test
    void warnsOfLoadsThatAreTheInstrumentsOwnReading() throws ConfigException {
        // given: what an indicator shows, to 10 N, beside its counts of 0.5 N; nothing was weighed
        List<String> kinds = kinds(
                "0.01,4013,up,1",
                "8.37,20747,up,1",
                "16.92,37845,up,1",
                "25.11,54214,up,1",
                "33.48,70961,up,1",
                "25.64,55287,down,1",
                "7.03,18055,down,1");

        assertTrue(kinds.contains("own-reading"), kinds.toString());
    }

    @Test
    void warnsOfCountsThatAreTheLoadsDigitByDigit() throws ConfigException {
        List<String> kinds = kinds("0,0,up,1", "1.23,123,up,1", "2.48,248,up,1", "3.77,377,up,1", "1.31,131,down,1");

        assertTrue(kinds.contains("own-reading"), kinds.toString());
    }

    @Test
    void believesRoundWeightsOnACoarseIndicator() throws ConfigException {
        // five weights of 1 kN on an indicator with steps of 0.1 kN
        List<String> kinds = kinds("0,0,up,1", "1,10,up,1", "2,20,up,1", "3,30,up,1", "4,40,up,1", "5,50,up,1");

        assertFalse(kinds.contains("own-reading"), kinds.toString());
    }

    @Test
    void warnsWhenLoadsDoNotReachWhatTheWinchPulls() throws Exception {
        // given: the example rig's winch pulls 40 kN
        Rig rig = Rig.parse("rig.toml", SampleDay.rigToml());
        CalibrationRequest request = new CalibrationRequest(
                OptionalInt.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(rig));
        LoadReadings small =
                Tables.kilonewtons("0,4001,up,1", "5,14000,up,1", "10,24003,up,1", "15,33999,up,1", "20,43998,up,1");

        CalibrationStudy study = CalibrationStudy.of(small, request);

        assertTrue(text(study, "does-not-reach").contains("20.0 kN: beyond it nothing is known"));
        assertTrue(text(study, "does-not-reach").contains("40.0 kN"));
        assertFalse(Tables.kinds(CalibrationStudy.of(Tables.kilonewtons(GOOD), request))
                .contains("does-not-reach"));
    }

    @Test
    void namesTheLinesWhereCountsFallAndAReadingThatIsFarOff() throws ConfigException {
        String[] rows = GOOD.clone();
        rows[2] = "20,23990,up,1"; // misread: 43990
        rows[6] = "20,23990,down,1";
        rows[11] = "20,23990,up,2";

        assertTrue(text(Tables.study(Tables.kilonewtons(rows)), "not-rising").contains("line 4, line 8, line 13"));

        String[] one = GOOD.clone();
        one[2] = "20,44998,up,1";
        assertTrue(text(Tables.study(Tables.kilonewtons(one)), "outlier").startsWith("Line 4 (20 kN)"));
    }

    /** At the least and the greatest load the two ways meet: a reading there that was come to from above tells nothing. */
    @Test
    void keepsFromWhichSideTheInnerLoadsWereComeTo() throws ConfigException {
        assertEquals(Directions.UP, directions("0,4000,up,1", "10,24000,up,1", "20,44001,up,1", "0,4002,down,1"));
        assertEquals(
                Directions.BOTH,
                directions("0,4000,up,1", "10,24000,up,1", "20,44001,up,1", "10,24003,down,1", "0,4002,down,1"));
        assertEquals(Directions.DOWN, directions("20,44001,down,1", "10,24003,down,1", "0,4002,down,1"));
        assertEquals(Directions.UNKNOWN, directions("0,4000,,1", "10,24000,,1", "20,44001,,1"));
    }

    private static Directions directions(String... rows) throws ConfigException {
        CalibrationStudy study = Tables.study(Tables.kilonewtons(rows));
        String toml = CalibrationToml.render(study);
        Directions read = CellCalibration.parse("calibration.toml", toml)
                .quality()
                .orElseThrow()
                .directions();
        assertEquals(study.quality().directions(), read);
        return read;
    }

    @Test
    void saysWhereACurveTurns() throws ConfigException {
        // counts = 4000 + 2000 F − 8 F² (kN): the top at 125 kN, 129 000 counts
        CalibrationStudy study = Tables.study(Tables.kilonewtons(
                "0,4000.4,up,1", "10,23200.1,up,1", "20,40799.7,up,1", "30,56800.2,up,1", "40,71199.9,up,1"));

        assertEquals(2, study.degree());
        assertTrue(text(study, "curve-turns").contains("125.0 kN"), text(study, "curve-turns"));
        assertFalse(kinds(GOOD).contains("curve-turns"));
    }

    @Test
    void warnsWhenALineIsForcedOnACurve() throws ConfigException {
        LoadReadings bent = Tables.kilonewtons(
                "0,4000.4,up,1", "10,23200.1,up,1", "20,40799.7,up,1", "30,56800.2,up,1", "40,71199.9,up,1");
        CalibrationRequest request = new CalibrationRequest(
                OptionalInt.of(1), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

        CalibrationStudy forced = CalibrationStudy.of(bent, request);

        assertEquals("line-not-good-enough", forced.cautions().get(0).kind());
        assertTrue(
                forced.leavesOut().get(0).contains("wrong shape"),
                forced.leavesOut().toString());
    }

    @Test
    void warnsOfMixedUnitsAndOfMasses() throws ConfigException {
        LoadReadings mixed = ReadingsTable.parse(
                "readings.csv", "load,unit,counts\n0,kg,1\n100,kg,1000\n2,kN,2040\n300,kg,3000.5\n4,kN,4080\n");

        assertTrue(Tables.kinds(Tables.study(mixed)).containsAll(List.of("mixed-units", "masses")));
    }

    @Test
    void refusesCountsThatFallWithTheLoad() {
        ConfigException wrong = assertThrows(
                ConfigException.class,
                () -> Tables.study(Tables.kilonewtons("0,4000,up,1", "10,3000,up,1", "20,2000,up,1")));

        assertTrue(wrong.getMessage().contains("swap the two signal wires"), wrong.getMessage());
    }

    @Test
    void refusesCountsThatDoNotMove() {
        for (String[] rows : new String[][] {
            {"0,5,up,1", "10,5,up,1", "20,5,up,1", "30,5,up,1"},
            {"0,4003,up,1", "10,3998,up,1", "20,4001,up,1", "30,4004,up,1", "40,3999,up,1"}
        }) {
            ConfigException wrong = assertThrows(ConfigException.class, () -> Tables.study(Tables.kilonewtons(rows)));

            assertTrue(wrong.getMessage().contains("do not rise with the load"), wrong.getMessage());
        }
    }

    @Test
    void refusesACurveThatTurnsBeforeTheGreatestLoad() throws ConfigException {
        // counts = 1000 F − 10 F²: the top at 50 kN, loads up to 60
        LoadReadings turning = Tables.kilonewtons(
                "0,0,up,1", "10,9000,up,1", "20,16000,up,1", "30,21000,up,1", "40,24000,up,1", "60,24001,up,1");
        CalibrationRequest request = new CalibrationRequest(
                OptionalInt.of(2), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

        ConfigException wrong = assertThrows(ConfigException.class, () -> CalibrationStudy.of(turning, request));

        assertTrue(wrong.getMessage().contains("does not rise all the way"), wrong.getMessage());
        assertEquals(1, Tables.study(turning).degree());
        String because = Tables.study(turning).choice().because();
        assertTrue(because.contains("it cannot be used"), because);
    }
}
