package tautlog.logger.control;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A folder of recordings is copied whole, and a socket cannot be copied. */
class ControlSocketTest {
    @TempDir
    Path folder;

    @Test
    void socketIsNotInTheRecordingsFolder() throws IOException {
        assertFalse(ControlSocket.path(folder).startsWith(folder.toRealPath()));
    }

    @Test
    void bothEndsMeetHoweverTheFolderIsNamed() throws IOException {
        Path link =
                Files.createSymbolicLink(folder.resolve("link"), Files.createDirectory(folder.resolve("recordings")));

        assertEquals(
                ControlSocket.path(folder.resolve("recordings")),
                ControlSocket.path(folder.resolve(".").resolve("recordings")));
        assertEquals(ControlSocket.path(folder.resolve("recordings")), ControlSocket.path(link));
    }

    @Test
    void loggersOfTwoFoldersHaveTwoSockets() throws IOException {
        assertNotEquals(ControlSocket.path(folder.resolve("one")), ControlSocket.path(folder.resolve("two")));
    }
}
