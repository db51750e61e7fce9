package tautlog.desk.progress;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class TimeLeftTest {
    private static final long SECOND = 1_000_000_000L;
    private static final long BEGAN = 77 * SECOND;

    private final TimeLeft left = new TimeLeft(BEGAN);

    private Optional<Duration> after(long seconds, long size) {
        return left.at(BEGAN + seconds * SECOND, size, 1_000);
    }

    @Test
    void saysNothingBeforeEnoughIsDone() {
        assertEquals(Optional.empty(), after(1, 500), "too soon");
        assertEquals(Optional.empty(), new TimeLeft(0).at(60 * SECOND, 49, 1_000), "too little");
        assertEquals(Optional.empty(), new TimeLeft(0).at(60 * SECOND, 0, 0), "no size is known");
    }

    @Test
    void whatIsLeftTakesAsLongAsWhatWasDone() {
        assertEquals(Optional.of(Duration.ofSeconds(30)), after(10, 250));
        assertEquals(Optional.of(Duration.ofSeconds(0)), after(40, 1_000));
    }

    @Test
    void laterHalfCountsForTheFirstThingsAreSlow() {
        after(10, 100);
        after(11, 200);

        assertEquals(Optional.of(Duration.ofSeconds(6)), after(13, 400), "3 s for the 300 since 100 of 400 were done");
    }

    @Test
    void wordsAreRoundedUpAndNoFinerThanKnown() {
        assertEquals("a few seconds left", TimeLeft.words(Duration.ofSeconds(9)));
        assertEquals("about 20 s left", TimeLeft.words(Duration.ofSeconds(10)));
        assertEquals("about 90 s left", TimeLeft.words(Duration.ofSeconds(89)));
        assertEquals("about 2 min left", TimeLeft.words(Duration.ofSeconds(90)));
        assertEquals("about 90 min left", TimeLeft.words(Duration.ofMinutes(90).minusSeconds(1)));
        assertEquals("about 2 h left", TimeLeft.words(Duration.ofMinutes(91)));
    }
}
