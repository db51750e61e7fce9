package tautlog.logger.clock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tautlog.logger.clock.BoardClock.Own;
import tautlog.logger.clock.BoardClock.State;

class BoardClockTest {
    private static final long SECOND = 1_000_000_000L;
    private static final Instant MAY = Instant.parse("2026-05-04T07:00:00Z");

    private boolean synchronised;
    private final BoardClock clock = new BoardClock(Own.USED, () -> synchronised);

    private static long micros(Instant instant) {
        return instant.getEpochSecond() * 1_000_000 + instant.getNano() / 1_000;
    }

    private State look(long second, Instant host) {
        clock.look(second * SECOND, micros(host), Optional.empty());
        return clock.state();
    }

    @Test
    void standsNotBeforeTheBuildsOwnDate() throws IOException {
        String pom = Files.readString(Path.of(System.getProperty("tautlog.root"), "pom.xml"));

        assertTrue(
                pom.contains("<project.build.outputTimestamp>" + BoardClock.MADE + "</"),
                "raise BoardClock.MADE together with the build's date");
    }

    @Test
    void doesNotBelieveAClockThatNobodySet() {
        assertEquals(State.UNSET, look(0, Instant.parse("1970-01-01T00:00:40Z")));
        assertEquals(State.UNSET, look(1, BoardClock.MADE.minusMillis(1)));
        assertEquals(Optional.empty(), clock.utcMicros());
        assertEquals(0, clock.steps());
    }

    @Test
    void believesOneThatWasSetAnHourLaterAndSaysSoOnce() {
        look(0, Instant.parse("1970-01-01T00:00:40Z"));
        look(3_600, Instant.parse("1970-01-01T01:00:40Z"));

        assertEquals(State.KNOWN, look(3_601, MAY));
        assertEquals(State.KNOWN, look(3_602, MAY.plusSeconds(1)));
        assertEquals(Optional.of(micros(MAY.plusSeconds(1))), clock.utcMicros());
        assertEquals(1, clock.steps());
    }

    @Test
    void countsEachJumpForwardAndBackAndNoSlowRun() {
        look(0, MAY);
        look(10, MAY.plusMillis(10_400));
        assertEquals(0, clock.steps());

        look(11, MAY.plusSeconds(14));
        look(12, MAY.minusSeconds(86_400));
        look(13, MAY.minusSeconds(86_399));
        assertEquals(2, clock.steps());
    }

    @Test
    void doesNotBelieveOneThatStandsBeforeTheNewestRecordingUntilItIsSet() {
        clock.newestRecording(micros(MAY));

        assertEquals(State.BEHIND_RECORDINGS, look(0, MAY.minusSeconds(61)));
        assertEquals(State.KNOWN, look(1, MAY.minusSeconds(60)), "a minute is let pass");
        assertEquals(State.BEHIND_RECORDINGS, look(2, MAY.minusSeconds(61)), "a jump of 2 s is none");
        assertEquals(State.KNOWN, look(3, MAY.minusSeconds(86_400)), "somebody set it");
        assertEquals(State.KNOWN, look(4, MAY.minusSeconds(86_399)));
    }

    @Test
    void believesASynchronisedOneWhateverTheRecordingsSay() {
        clock.newestRecording(micros(MAY.plusSeconds(10L * 365 * 86_400)));
        assertEquals(State.BEHIND_RECORDINGS, look(0, MAY));

        synchronised = true;

        assertEquals(State.KNOWN, look(1, MAY.plusSeconds(1)));
    }

    @Test
    void takesTheReceiversTimeWhileItsOwnIsUnknown() {
        clock.look(0, 40_000_000, Optional.of(micros(MAY)));
        assertEquals(State.KNOWN, clock.state());
        assertEquals(Optional.of(micros(MAY)), clock.utcMicros());

        clock.look(SECOND, micros(MAY.plusSeconds(1)), Optional.of(micros(MAY.plusSeconds(1))));
        assertEquals(0, clock.steps(), "the computer's was set, but to what was known");
    }

    @Test
    void leavesTheComputersOutWhereTheReceiverAloneCounts() {
        BoardClock receiver = new BoardClock(Own.LEFT_OUT, () -> true);

        receiver.look(0, micros(MAY), Optional.empty());

        assertEquals(State.UNSET, receiver.state());
    }
}
