package tautlog.logger.service;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class FeedingTest {
    private static final Optional<Duration> WATCHED = Optional.of(Duration.ofSeconds(30));

    private final List<String> told = new ArrayList<>();
    private boolean works = true;
    private boolean away;

    private void hear(String state) throws IOException {
        if (away) {
            throw new IOException("nobody hears");
        }
        told.add(state);
    }

    private Feeding feeding(Optional<Duration> watchdog) {
        return new Feeding(this::hear, watchdog, () -> works);
    }

    @Test
    void saysReadyOnceAndFeedsAtEachTurn() throws Exception {
        Feeding feeding = feeding(WATCHED);

        assertTrue(feeding.turn());
        assertTrue(feeding.turn());

        assertEquals(List.of("READY=1", "WATCHDOG=1", "WATCHDOG=1"), told);
    }

    @Test
    void feedsNothingWhileTheLoggerHangs() throws Exception {
        Feeding feeding = feeding(WATCHED);
        feeding.turn();
        told.clear();

        works = false;
        feeding.turn();
        assertEquals(List.of(), told);

        works = true;
        feeding.turn();
        assertEquals(List.of("WATCHDOG=1"), told);
    }

    @Test
    void endsWithReadyWhereNobodyWatches() throws Exception {
        assertFalse(feeding(Optional.empty()).turn());
        assertEquals(List.of("READY=1"), told);
    }

    @Test
    void saysReadyAgainUntilItIsHeard() throws Exception {
        Feeding feeding = feeding(Optional.empty());
        away = true;
        assertTrue(feeding.turn());

        away = false;
        assertFalse(feeding.turn());
        assertEquals(List.of("READY=1"), told);
    }

    @Test
    void isOnlyThereForAService() {
        assertTrue(
                Feeding.wanted(Map.of("WATCHDOG_USEC", "30000000"), () -> true).isEmpty());
        assertTrue(Feeding.wanted(Map.of("NOTIFY_SOCKET", ""), () -> true).isEmpty());
        assertTrue(Feeding.wanted(Map.of("NOTIFY_SOCKET", "/run/systemd/notify"), () -> true)
                .isPresent());
    }
}
