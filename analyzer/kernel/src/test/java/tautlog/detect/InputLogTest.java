package tautlog.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Against a list that is looked through from its beginning. */
class InputLogTest {
    private static final int CLUTCH = 2;

    private record Said(long number, Known clutch) {}

    private static Known clutch(int present, int state) {
        if ((present & CLUTCH) == 0) {
            return Known.UNKNOWN;
        }
        return (state & CLUTCH) == 0 ? Known.NO : Known.YES;
    }

    private static Known clutchFrom(List<Said> said, long first, long last) {
        Known known = Known.UNKNOWN;
        for (Said one : said) {
            known = one.number <= first ? one.clutch : known;
        }
        for (Said one : said) {
            if (one.number > first && one.number <= last && one.clutch != known) {
                return Known.UNKNOWN;
            }
        }
        return known;
    }

    @Test
    void tellsTheClutchOverAnyStretchAlsoWhenInputsComeOutOfOrder() {
        Random random = new Random(1);
        for (int round = 0; round < 3_000; round++) {
            // given
            InputLog log = new InputLog();
            List<Said> said = new ArrayList<>();
            int latestPresent = 0;
            int latestState = 0;
            for (int i = random.nextInt(6); i > 0; i--) {
                long number = random.nextInt(12);
                int present = random.nextInt(4);
                int state = random.nextInt(4);
                log.add(number, present, state);
                if (present == latestPresent && state == latestState) {
                    continue; // says nothing new
                }
                latestPresent = present;
                latestState = state;
                said.add(new Said(number, clutch(present, state)));
            }

            for (long first = -1; first < 13; first++) {
                // when, then
                long last = first + random.nextInt(8);
                assertEquals(
                        clutchFrom(said, first, last), log.clutchFrom(first, last), said + " " + first + " " + last);
            }
        }
    }
}
