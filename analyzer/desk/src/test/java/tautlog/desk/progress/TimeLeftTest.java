package tautlog.desk.progress;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class TimeLeftTest {
    private static final long SECOND = 1_000_000_000L;
    private static final long BEGAN = 77 * SECOND;

    private final TimeLeft left = new TimeLeft(BEGAN);

    private Optional<Duration> after(double seconds, long size) {
        return left.at(BEGAN + (long) (seconds * SECOND), size, 1_000);
    }

    private void steadily(int things, int sizeEach, double secondsEach) {
        for (int i = 1; i <= things; i++) {
            after(i * secondsEach, (long) i * sizeEach);
        }
    }

    @Test
    void saysNothingBeforeEnoughIsDone() {
        steadily(5, 100, 0.3);
        assertEquals(Optional.empty(), after(1.9, 700), "too soon");
        assertTrue(after(2, 701).isPresent());
    }

    @Test
    void norOfFewThingsHoweverLarge() {
        steadily(2, 300, 10);

        assertEquals(Optional.empty(), after(30, 900));
        assertTrue(after(31, 901).isPresent());
    }

    @Test
    void norOfManyThatAreLittleOfAll() {
        steadily(9, 10, 10);

        assertEquals(Optional.empty(), after(100, 99));
        assertTrue(after(101, 100).isPresent());
    }

    @Test
    void norOfWhatHasNoSize() {
        for (int i = 1; i < 50; i++) {
            assertEquals(Optional.empty(), left.at(BEGAN + i * SECOND, 0, 0));
        }
    }

    @Test
    void whatIsLeftTakesAsLongAsWhatWasDone() {
        steadily(9, 25, 1);

        assertEquals(Optional.of(Duration.ofSeconds(30)), after(10, 250));
        assertEquals(Optional.of(Duration.ofSeconds(0)), after(40, 1_000));
    }

    @Test
    void laterHalfCountsForTheFirstThingsAreSlow() {
        after(10, 100);
        after(11, 200);
        after(12, 300);

        assertEquals(Optional.of(Duration.ofSeconds(6)), after(13, 400), "2 s for the later 200 of 400");
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
