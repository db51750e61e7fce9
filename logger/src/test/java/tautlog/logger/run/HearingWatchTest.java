package tautlog.logger.run;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import org.junit.jupiter.api.Test;
import tautlog.logger.beacon.BeaconLamp;
import tautlog.logger.instrument.Hearing.State;
import tautlog.logger.wire.BeaconState;
import tautlog.logger.wire.LineCounts;
import tautlog.logger.wire.LineCounts.OutingState;
import tautlog.sample.Tally;

class HearingWatchTest {
    private static final long SECOND = 1_000_000_000L;

    private final BeaconLamp lamp = new BeaconLamp();
    private final HearingWatch watch = new HearingWatch("scripted", lamp);

    private void look(int second, long framesOfSameId) {
        lamp.sensor(BeaconState.CLEAR, second * SECOND);
        Tally tally = new Tally(Map.of("SHAFT_SAME_ID", framesOfSameId), 0, 0, 0);
        watch.look(9_000, new LineCounts(tally, 0, OutingState.ON), true, second * SECOND);
    }

    @Test
    void showsFaultWhileTheShaftClaimsTheInstrumentsId() {
        look(1, 10);
        look(2, 20);
        assertEquals(State.SAME_ID, watch.state());
        assertEquals(BeaconState.FAULT, lamp.shown(5 * SECOND), "however clear the line is");

        // when: another instrument was put there
        look(6, 20);

        assertEquals(State.UNDERSTOOD, watch.state());
        assertEquals(BeaconState.CLEAR, lamp.shown(7 * SECOND));
    }
}
