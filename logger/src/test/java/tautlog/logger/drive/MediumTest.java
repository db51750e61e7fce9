package tautlog.logger.drive;

import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tautlog.logger.drive.DriveState.ReadBack;

class MediumTest {
    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 511, 4_096, (256 << 10) - 1, 256 << 10, (256 << 10) + 1, 1_000_000})
    void readsAFileOfAnyLengthPastTheMemory(int length) throws IOException {
        Path file = folder.resolve("file");
        byte[] bytes = new byte[length];
        new Random(length).nextBytes(bytes);
        Files.write(file, bytes);
        Medium.flush(file);
        Medium.flush(folder);

        assertNotEquals(ReadBack.NOTHING, Medium.compare(file));
    }

    @Test
    void saysWhenTheFileIsGone() {
        assertThrows(NoSuchFileException.class, () -> Medium.compare(folder.resolve("file")));
    }
}
