package tautlog.config;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class NearestKeyTest {
    private static final List<String> KNOWN = List.of("pull_from", "pull_for", "drop_from", "bridge");

    @Test
    void findsTheWordWithTheFewestChanges() {
        assertEquals(Optional.of("pull_from"), NearestKey.to("pull_frm", KNOWN));
        assertEquals(Optional.of("bridge"), NearestKey.to("brigde", KNOWN));
        assertEquals(Optional.of("drop_from"), NearestKey.to("drop-from", KNOWN));
    }

    @Test
    void offersNothingForAWordThatIsFarFromAll() {
        assertEquals(Optional.empty(), NearestKey.to("colour", KNOWN));
        assertEquals(Optional.empty(), NearestKey.to("x".repeat(10_000), KNOWN));
    }
}
