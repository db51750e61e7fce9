package tautlog.logger.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ControlServerTest {
    @TempDir
    Path folder;

    /** Answers marks, and has no memory left for a status. */
    private static final class Poor implements Controlled {
        @Override
        public Status status() {
            throw new OutOfMemoryError("of the test");
        }

        @Override
        public MarkAnswer mark(Optional<String> hookup, Optional<String> note) {
            return new MarkAnswer(true, Optional.of(7L), "marked");
        }
    }

    @Test
    void answersTheNextClientAfterABugWithOne() throws Exception {
        try (ControlServer server = ControlServer.open(folder, new Poor())) {
            Thread thread = new Thread(server, "control");
            thread.setDaemon(true);
            thread.start();
            assertThrows(IOException.class, () -> new ControlClient(folder).status());

            Optional<MarkAnswer> answer = new ControlClient(folder).mark(Optional.empty(), Optional.of("stump"));

            assertEquals(Optional.of(7L), answer.orElseThrow().atNumber());
            assertTrue(thread.isAlive());
        }
    }
}
