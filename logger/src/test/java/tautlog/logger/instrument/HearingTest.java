package tautlog.logger.instrument;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import org.junit.jupiter.api.Test;
import tautlog.logger.instrument.Hearing.State;
import tautlog.logger.wire.LineCounts;
import tautlog.logger.wire.LineCounts.OutingState;
import tautlog.sample.Tally;

class HearingTest {
    private final Hearing hearing = new Hearing();

    private static LineCounts counts(OutingState outing, Map<String, Long> rejected, long held) {
        return new LineCounts(new Tally(rejected, 0, 0, held), 0, outing);
    }

    private State look(long bytes, boolean samples, LineCounts counts) {
        return hearing.look(bytes, counts, samples);
    }

    @Test
    void tellsGarbageAtTheSecondLookAlsoWhenNoPieceEverEnds() {
        LineCounts none = counts(OutingState.NONE, Map.of(), 0);

        assertEquals(State.NOTHING, look(9_000, false, none));
        assertEquals(State.NOT_UNDERSTOOD, look(9_000, false, none));
        assertEquals(State.NOT_UNDERSTOOD, look(0, false, none));
        assertEquals(State.NOTHING, look(0, false, none));
    }

    @Test
    void isQuietAboutASecondBetweenPlugAndHello() {
        assertEquals(State.NOTHING, look(9_000, false, counts(OutingState.NONE, Map.of(), 0)));
        assertEquals(State.UNDERSTOOD, look(9_000, true, counts(OutingState.ON, Map.of(), 0)));
    }

    @Test
    void tellsGarbageWhileAnOutingIsOnOnlyWhenItGrowsAndNoSampleComes() {
        look(9_000, false, counts(OutingState.ON, Map.of("BAD_CRC", 5L), 0));
        assertEquals(State.NOT_UNDERSTOOD, look(9_000, false, counts(OutingState.ON, Map.of("BAD_CRC", 9L), 0)));
        assertEquals(State.UNDERSTOOD, look(9_000, true, counts(OutingState.ON, Map.of("BAD_CRC", 12L), 0)));
        assertEquals(
                State.UNDERSTOOD,
                look(100, false, counts(OutingState.ON, Map.of("BAD_CRC", 12L), 0)),
                "frames without samples are understood");
    }

    @Test
    void tellsFramesThatWaitForAHelloInVain() {
        look(9_000, false, counts(OutingState.NONE, Map.of(), 50));

        assertEquals(State.NO_HELLO, look(9_000, false, counts(OutingState.NONE, Map.of(), 100)));
    }

    @Test
    void tellsTwoInstrumentsAndASharedIdBeforeAllElse() {
        LineCounts two = counts(OutingState.TWO_INSTRUMENTS, Map.of("TWO_INSTRUMENTS", 3L), 0);
        look(9_000, true, two);
        assertEquals(State.TWO_INSTRUMENTS, look(9_000, true, two));

        look(9_000, true, counts(OutingState.ON, Map.of("SHAFT_SAME_ID", 10L), 0));
        assertEquals(State.SAME_ID, look(9_000, true, counts(OutingState.ON, Map.of("SHAFT_SAME_ID", 20L), 0)));
    }
}
