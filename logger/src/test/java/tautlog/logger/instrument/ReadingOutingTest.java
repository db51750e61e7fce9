package tautlog.logger.instrument;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tautlog.logger.config.ReadingScale;
import tautlog.logger.wire.LineCounts.OutingState;
import tautlog.quantity.ForceUnit;
import tautlog.sample.Instrument;

class ReadingOutingTest {
    private static final long MILLI = 1_000_000L;
    private static final long START = 77 * MILLI;
    private static final ReadingScale SCALE = new ReadingScale("SCALE-1", ForceUnit.KN, 2, 10_000, 6_000);

    private final ToldOuting told = new ToldOuting();
    private final ReadingOuting outing = new ReadingOuting(SCALE, 0xCAFE, told);

    private void at(long millis, long value) {
        outing.reading(START + millis * MILLI, value);
    }

    @Test
    void beginsWithTheFirstReadingAndSaysWhatTheConfigurationKnows() {
        // when
        outing.rejected(ReadingFault.UNKNOWN_LINE);
        at(0, 123);

        // then
        assertEquals(
                new Instrument("SCALE-1", 0, 0, 0xCAFE, 1_000_000, 10_000, 6_000, 0),
                told.instrument().orElseThrow());
        assertEquals(List.of("begin 0", "first 0"), told.calls());
        assertEquals(List.of("tension 0 0 0 [123]"), told.evidence());
    }

    @Test
    void numbersAReadingByTheTimeSinceTheLastSoThatJitterIsNoGapAndAPauseIs() {
        // when: 100 ms nominal; early, late, just late enough, two at once, a pause of 1 s
        at(0, 1);
        at(51, 2);
        at(200, 3);
        at(350, 4);
        at(350, 5);
        at(1_350, 6);

        // then: 49 % and 149 % of an interval are one, 150 % are two
        assertEquals(
                List.of(
                        "tension 0 0 0 [1]",
                        "tension 1 51000 0 [2]",
                        "tension 2 200000 0 [3]",
                        "tension 4 350000 0 [4]",
                        "tension 5 350000 0 [5]",
                        "tension 15 1350000 0 [6]"),
                told.evidence());
    }

    @Test
    void takesAWordForOverloadAsABoundAndAReadingBeyondTheScaleAsNone() {
        // when
        outing.overload(START);
        at(100, 6_000);
        at(200, 6_001);
        at(300, -6_000);
        at(400, -6_001);
        outing.underload(START + 500 * MILLI);

        // then
        assertEquals(List.of(6_000, 6_000, -6_000, -6_001), told.counts());
        assertEquals(
                List.of("1", "1", "0", "1"),
                told.evidence().stream().map(line -> line.split(" ")[3]).toList());
        assertEquals(Map.of("OUT_OF_RANGE", 2L), outing.counts().tally().rejected());
    }

    @Test
    void tellsFaultsOnceASecondAndAtTheEnd() {
        // given
        at(0, 1);

        // when
        outing.rejected(ReadingFault.WRONG_UNIT);
        outing.arriving(START + 900 * MILLI);
        outing.arriving(START + 1_000 * MILLI);
        outing.arriving(START + 2_000 * MILLI);
        outing.rejected(ReadingFault.TIMEOUT);
        outing.end();

        // then
        List<String> tallies = told.evidence().stream()
                .filter(line -> line.startsWith("tally"))
                .toList();
        assertEquals(2, tallies.size(), told.evidence()::toString);
        assertTrue(tallies.get(0).contains("{WRONG_UNIT=1}"), tallies::toString);
        assertTrue(tallies.get(1).contains("{TIMEOUT=1, WRONG_UNIT=1}"), tallies::toString);
        assertEquals("ended 0", told.calls().get(2));
        assertEquals(OutingState.NONE, outing.counts().outing());
    }

    @Test
    void derivesTheCalibrationFromTheUnitExactly() {
        // 1 kN in steps of 0.01 is 10 N; 1 lbf = 4.4482216152605 N (exact: 0.45359237 kg · 9.80665 m/s2)
        assertEquals(0, BigDecimal.TEN.compareTo(SCALE.calibration().newtonsPerCount()));
        assertEquals(
                new BigDecimal("0.0044482216152605"),
                new ReadingScale("P", ForceUnit.LBF, 3, 10_000, 1).calibration().newtonsPerCount());
    }
}
