package tautlog.desk.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import tautlog.config.ConfigException;

/**
 * Worked by hand. Terms: hysteresis = (down − up at the same load) / full scale, zero return = (zero after − zero before) /
 * full scale (general measurement practice).
 */
class BehaviourTest {
    private static final String[] TWO_RUNS = {
        "0,1000,up,1", "10,3000,up,1", "20,5002,up,1", "10,3006,down,1", "0,1003,down,1",
        "0,1002,up,2", "10,3004,up,2", "20,4998,up,2", "10,3008,down,2", "0,1001,down,2"
    };

    @Test
    void takesHysteresisFromTheMeansOfBothWays() throws ConfigException {
        // given: at 10 kN up 3000 and 3004, down 3006 and 3008: 3007 − 3002 = 5; at 0 kN 1002 − 1001 = 1
        // full scale: (5002 + 4998)/2 − (1000 + 1003 + 1002 + 1001)/4 = 5000 − 1001.5
        CalibrationStudy study = Tables.study(Tables.kilonewtons(TWO_RUNS));

        Behaviour.Loop loop = study.behaviour().hysteresis().orElseThrow();

        assertEquals(5, loop.counts(), 1e-9);
        assertEquals(10_000, loop.newtons());
        assertEquals(3998.5, study.behaviour().fullScaleCounts(), 1e-9);
    }

    @Test
    void takesZeroReturnFromTheRunWhereItIsGreatest() throws ConfigException {
        // run 1: 1003 − 1000 = 3; run 2: 1001 − 1002 = −1
        assertEquals(
                3,
                Tables.study(Tables.kilonewtons(TWO_RUNS))
                        .behaviour()
                        .zeroReturnCounts()
                        .orElseThrow());
    }

    @Test
    void takesRepeatabilityBetweenRunsThatCameTheSameWay() throws ConfigException {
        // up at 10 kN 3000, 3004: 4; up at 20 kN 5002, 4998: 4; down at 10 kN: 2; the ways are not mixed (3008 − 3000 =
        // 8)
        assertEquals(
                4,
                Tables.study(Tables.kilonewtons(TWO_RUNS))
                        .behaviour()
                        .spreadCounts()
                        .orElseThrow());
    }

    @Test
    void tellsNothingThatWasNotRead() throws ConfigException {
        Behaviour seen = Tables.study(Tables.kilonewtons("5,1000,,", "10,2001,,", "15,2999,,", "20,4000,,"))
                .behaviour();

        assertTrue(seen.hysteresis().isEmpty());
        assertTrue(seen.spreadCounts().isEmpty());
        assertTrue(seen.zeroReturnCounts().isEmpty());
    }

    @Test
    void takesNoZeroReturnWithoutALoadBetween() throws ConfigException {
        Behaviour seen = Tables.study(Tables.kilonewtons("0,1000,up,1", "0,1009,up,1", "10,2001,up,1", "20,2999,up,1"))
                .behaviour();

        assertTrue(seen.zeroReturnCounts().isEmpty());
    }
}
