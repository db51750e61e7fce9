package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NotedLinkTest {
    private static final String LINK = "0123456789abcdef".repeat(4);

    @Test
    void isReadFromItsLine() {
        NotedLink noted = new NotedLink(Instant.parse("2026-05-04T17:03:12.7Z"), "upper_2026-05-04.tautlog", LINK);

        assertEquals("2026-05-04T17:03:12Z  upper_2026-05-04.tautlog  " + LINK, noted.line());
        assertEquals(Optional.of(noted), NotedLink.in(noted.line()));
        assertEquals(Optional.of(noted), NotedLink.in(noted.line() + "\r"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "# a remark of three",
                "2026-05-04T17:03:12Z  upper_2026-05-04.tautlog  0123456789abcdef",
                "yesterday  upper_2026-05-04.tautlog  0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef",
                "2026-05-04T17:03:12Z  upper_2026-05-04.tautlog"
            })
    void isNotReadFromARemarkOrATornLine(String line) {
        assertEquals(Optional.empty(), NotedLink.in(line));
    }

    @Test
    void refusesWhatItsLineCouldNotHold() {
        assertThrows(IllegalArgumentException.class, () -> new NotedLink(Instant.EPOCH, "two words", LINK));
        assertThrows(IllegalArgumentException.class, () -> new NotedLink(Instant.EPOCH, "a.tautlog", "00ff"));
    }
}
