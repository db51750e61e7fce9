package tautlog.logger.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The page for instrument builders shows the very bytes that the tests use. */
class WirePageTest {
    @Test
    void showsTheVectorsThatTheDecoderIsTestedWith() throws IOException {
        Path page = Path.of(System.getProperty("tautlog.root"), "firmware-notes", "wire.md");

        List<String> frames = Files.readAllLines(page).stream()
                .filter(line -> line.matches("  ([0-9a-f]{2} )+00"))
                .map(String::strip)
                .toList();

        List<String> expected = List.of(
                        WireVectorsTest.HELLO,
                        WireVectorsTest.TENSION,
                        WireVectorsTest.SHAFT,
                        WireVectorsTest.HEALTH,
                        WireVectorsTest.INPUT,
                        WireVectorsTest.BEACON)
                .stream()
                .map(HexFormat.ofDelimiter(" ")::formatHex)
                .toList();
        assertEquals(expected, frames);
    }
}
