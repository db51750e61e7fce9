package tautlog.logger.pty;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

@EnabledOnOs(OS.LINUX)
@Timeout(20)
final class PseudoTerminalTest {
    private static final Duration LONG = Duration.ofSeconds(10);

    @Test
    void everyByteValueArrivesUnchanged() throws Exception {
        byte[] sent = new byte[256];
        for (int i = 0; i < sent.length; i++) {
            sent[i] = (byte) i;
        }
        try (PseudoTerminal terminal = PseudoTerminal.open();
                RandomAccessFile port = new RandomAccessFile(terminal.portName(), "rw")) {
            terminal.write(sent);
            byte[] got = new byte[sent.length];
            port.readFully(got);
            assertArrayEquals(sent, got);
        }
    }

    @Test
    void bytesWrittenToThePortComeBack() throws Exception {
        try (PseudoTerminal terminal = PseudoTerminal.open();
                RandomAccessFile port = new RandomAccessFile(terminal.portName(), "rw")) {
            port.write(new byte[] {2, (byte) 0x81, 6, 2, 10, 13, 3, 4, 0});
            byte[] got = new byte[64];
            int n = readSome(terminal, got);
            assertArrayEquals(new byte[] {2, (byte) 0x81, 6, 2, 10, 13, 3, 4, 0}, Arrays.copyOf(got, n));
        }
    }

    @Test
    @SuppressWarnings("try") // closed early on purpose
    void nothingIsLostToASlowReaderWhoIsWaitedFor() throws Exception {
        byte[] sent = new byte[300_000]; // far beyond the kernel's buffers
        new Random(7).nextBytes(sent);
        byte[] got = new byte[sent.length];
        try (PseudoTerminal terminal = PseudoTerminal.open();
                RandomAccessFile port = new RandomAccessFile(terminal.portName(), "r")) {
            var reader = CompletableFuture.runAsync(() -> readSlowly(port, got));
            assertTrue(terminal.write(sent, 0, sent.length));
            assertTrue(terminal.waitUntilTaken(LONG));
            terminal.close();
            reader.get();
        }
        assertArrayEquals(sent, got);
    }

    @Test
    void bytesNotTakenAreReportedNotWaitedForForEver() throws Exception {
        try (PseudoTerminal terminal = PseudoTerminal.open();
                RandomAccessFile port = new RandomAccessFile(terminal.portName(), "r")) {
            terminal.write(new byte[100]);
            assertFalse(terminal.waitUntilTaken(Duration.ofMillis(100)));
            port.readFully(new byte[100]);
            assertTrue(terminal.waitUntilTaken(LONG));
        }
    }

    @Test
    void knowsWhetherThePortIsOpenAndDropsWhatNobodyReads() throws Exception {
        try (PseudoTerminal terminal = PseudoTerminal.open()) {
            assertFalse(terminal.hasReader());
            assertFalse(terminal.write(new byte[1], 0, 1));
            assertFalse(terminal.waitForReader(Duration.ofMillis(20)));
            try (RandomAccessFile port = new RandomAccessFile(terminal.portName(), "r")) {
                assertTrue(terminal.waitForReader(LONG));
                assertEquals(0, terminal.read(new byte[8]));
                terminal.write(new byte[] {42});
                assertEquals(42, port.read());
            }
            assertFalse(terminal.hasReader());
        }
    }

    @Test
    void theReaderSeesAHangUp() throws Exception {
        PseudoTerminal terminal = PseudoTerminal.open();
        try (RandomAccessFile port = new RandomAccessFile(terminal.portName(), "r")) {
            terminal.close();
            assertTrue(hungUp(port));
            assertThrows(IOException.class, () -> terminal.write(new byte[1]));
        }
    }

    @Test
    void theLinkNamesThePortAndGoesWithIt(@TempDir Path folder) throws Exception {
        Path link = folder.resolve("instrument");
        try (PseudoTerminal terminal = PseudoTerminal.open()) {
            terminal.linkAt(link);
            assertEquals(Path.of(terminal.portName()), Files.readSymbolicLink(link));
        }
        assertFalse(Files.isSymbolicLink(link));
    }

    @Test
    void refusesToReplaceAFileByTheLink(@TempDir Path folder) throws Exception {
        Path file = Files.writeString(folder.resolve("notes"), "keep me");
        try (PseudoTerminal terminal = PseudoTerminal.open()) {
            assertThrows(IOException.class, () -> terminal.linkAt(file));
        }
        assertEquals("keep me", Files.readString(file));
    }

    private static int readSome(PseudoTerminal terminal, byte[] into) throws Exception {
        int n = 0;
        for (int look = 0; n == 0 && look < 1000; look++) {
            n = terminal.read(into);
            Thread.sleep(1);
        }
        return n;
    }

    private static void readSlowly(RandomAccessFile port, byte[] into) {
        try {
            for (int done = 0; done < into.length; ) {
                done += Math.max(0, port.read(into, done, Math.min(5000, into.length - done)));
                Thread.sleep(1);
            }
        } catch (IOException | InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private static boolean hungUp(RandomAccessFile port) {
        try {
            return port.read() < 0;
        } catch (IOException e) {
            return true; // EIO, the other way in which Linux says it
        }
    }
}
