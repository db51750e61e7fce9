package tautlog.desk.incident;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import tautlog.calibration.CellCalibration;
import tautlog.desk.fixtures.SampleDay;
import tautlog.recording.Outing;
import tautlog.recording.OutingStart;
import tautlog.sample.Calibration;
import tautlog.sample.ClockFix;
import tautlog.sample.Tally;

class ClockTrustTest {
    private static final long SECOND = 1_000_000;

    private static Outing outing(List<ClockFix> fixes) {
        OutingStart start = new OutingStart(
                SampleDay.instrument(1),
                SampleDay.rigToml(),
                CellCalibration.written(Calibration.of("0", "1")),
                "test",
                OutingStart.Source.INSTRUMENT);
        return new Outing(0, start, 1, 0, 60_000, 0, 120 * SECOND, true, true, false, fixes, Tally.NONE);
    }

    @Test
    void tellsHowFarTheNearestLookIsAndHowLateTheLatest() {
        ClockTrust trust =
                ClockTrust.of(outing(List.of(new ClockFix(0, 0), new ClockFix(10 * SECOND, 10 * SECOND + 30_000))), 13);

        assertEquals(2, trust.looks());
        assertEquals(0, trust.set());
        assertEquals(3, trust.nearestSeconds().orElseThrow(), 1e-9);
        assertEquals(0.03, trust.greatestLateSeconds(), 1e-9);
    }

    @Test
    void setsAsideWhatCameBeforeTheClockWasSet() {
        ClockTrust trust =
                ClockTrust.of(outing(List.of(new ClockFix(0, 0), new ClockFix(10 * SECOND, 3_610 * SECOND))), 5);

        assertEquals(1, trust.set());
        assertEquals(5, trust.nearestSeconds().orElseThrow(), 1e-9);
    }

    @Test
    void knowsNothingWithoutALook() {
        assertTrue(ClockTrust.of(outing(List.of()), 5).nearestSeconds().isEmpty());
    }
}
