package tautlog.desk.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import tautlog.config.ConfigException;
import tautlog.config.Problem;
import tautlog.quantity.ForceUnit;

class ReadingsTableTest {
    private static LoadReadings parse(String text) throws ConfigException {
        return ReadingsTable.parse("readings.csv", text);
    }

    private static List<Problem> problems(String text) {
        return assertThrows(ConfigException.class, () -> parse(text)).problems();
    }

    @Test
    void readsColumnsInAnyOrderAndUnitsExactly() throws ConfigException {
        LoadReadings read = parse(
                "# a remark\nrun;counts;unit;load;direction;time\n"
                        + "a;10.5;kgf;0;up;2026-04-30T09:00:00Z\na;20;kgf;100;up;\na;30;kgf;200;DOWN;2026-04-30T11:02:00+02:00\n");

        assertEquals(new BigDecimal("1961.33000"), read.readings().get(2).newtons());
        assertEquals(Direction.DOWN, read.readings().get(2).direction());
        assertEquals(5, read.readings().get(2).line());
        assertEquals(List.of(ForceUnit.KGF), read.units());
        assertEquals(Instant.parse("2026-04-30T09:02:00Z"), read.lastAt().orElseThrow());
        assertEquals(new BigDecimal("0.1"), read.countStep());
    }

    @Test
    void takesTheShuntsStepFromTheReadingBeforeItAtTheSameLoad() throws ConfigException {
        LoadReadings read = parse(
                "load,unit,counts,direction\n0,kN,4000.5,up\n0,kN,65234.75,shunt\n10,kN,24000,up\n20,kN,44000,up\n");

        assertEquals(List.of(new BigDecimal("61234.25")), read.shuntSteps());
        assertEquals(3, read.readings().size(), "the shunt is no load");
    }

    @Test
    void tellsEveryProblemWithItsLine() {
        List<Problem> problems = problems("load,unit,counts,direction\n"
                + "0,kN,4000,up\n"
                + "ten,kN,4000,up\n"
                + "10,,x,sideways\n"
                + "20,stone,NaN,up\n"
                + "-5,kN,1,up\n"
                + "3,kN,1e99,shunt\n");

        assertEquals(
                List.of("3 load", "4 unit", "4 counts", "4 direction", "5 unit", "5 counts", "6 load", "7 counts"),
                problems.stream()
                        .map(problem -> problem.line() + " " + problem.key())
                        .toList());
    }

    @Test
    void saysHowToWriteACommaAndAMissingUnit() {
        String message = problems("load;unit;counts\n12,5;kN;1\n3;;2\n").toString();

        assertTrue(message.contains("\"12.5\""), message);
        assertTrue(message.contains("the unit is missing"), message);
        assertTrue(message.contains("Allowed: N, kN, daN, kgf"), message);
    }

    @Test
    void namesMissingAndMistypedColumns() {
        String message = problems("load,counts,directon\n1,2,up\n").toString();

        assertTrue(message.contains("unit: this column is missing"), message);
        assertTrue(message.contains("a load without one is not guessed"), message);
        assertTrue(message.contains("Did you mean \"direction\"?"), message);
    }

    @Test
    void refusesTooFewReadingsAndAnEmptyFile() {
        assertTrue(problems("load,unit,counts\n10,kN,1\n10,kN,2\n10,kN,2\n")
                .toString()
                .contains("at 1 loads are too few"));
        assertTrue(problems("").toString().contains("the file is empty"));
        assertTrue(problems("load,unit,counts\n").toString().contains("0 readings"));
    }

    @Test
    void refusesAShuntBeforeAnyReading() {
        assertTrue(problems("load,unit,counts,run\n0,kN,9,shunt\n0,kN,1,1\n1,kN,2,1\n2,kN,3,1\n")
                .toString()
                .contains("stands before it"));
    }
}
