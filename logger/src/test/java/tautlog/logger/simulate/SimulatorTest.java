package tautlog.logger.simulate;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.RandomAccessFile;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import tautlog.logger.wire.BeaconState;
import tautlog.logger.wire.FrameEncoder;

/** The shell, from outside: a logger's end of the port, a real pseudo-terminal. */
@EnabledOnOs(OS.LINUX)
@Timeout(60)
final class SimulatorTest {
    @Test
    void aReaderGetsEveryByteThenTheHangUpAndItsBeaconIsInTheTruth(@TempDir Path folder) throws Exception {
        Path link = folder.resolve("instrument");
        Path truthFile = Simulator.Request.truthBeside(link);
        StringWriter words = new StringWriter();
        Simulator.Request request = new Simulator.Request(Scenario.PARTING, link, 1_000, 4, truthFile);
        Simulator simulator = new Simulator(request, new PrintWriter(words), false);
        CompletableFuture<byte[]> logger = CompletableFuture.supplyAsync(() -> readAll(link));

        Truth truth = simulator.run().orElseThrow();

        ByteArrayOutputStream expected = new ByteArrayOutputStream();
        Simulation.play(Scenario.PARTING, 4, (bytes, n, seconds) -> expected.write(bytes, 0, n));
        assertArrayEquals(expected.toByteArray(), logger.get());
        assertEquals(
                List.of("OVER"), truth.beacons.stream().map(Truth.Beacon::state).toList());
        assertEquals(truth.toJson(), Files.readString(truthFile));
        assertFalse(Files.exists(link, LinkOption.NOFOLLOW_LINKS));
        assertTrue(words.toString().contains("waiting for a logger"), words::toString);
    }

    private static byte[] readAll(Path link) {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        byte[] some = new byte[8_192];
        byte[] beacon = new byte[FrameEncoder.LONGEST_FRAME];
        int beaconSize = new FrameEncoder().beacon(beacon, 0, 0, BeaconState.OVER);
        try {
            while (!Files.exists(link)) {
                Thread.sleep(5);
            }
            try (RandomAccessFile port = new RandomAccessFile(link.toFile(), "rw")) {
                port.write(beacon, 0, beaconSize);
                readUntilHungUp(port, some, all);
            }
        } catch (IOException | InterruptedException e) {
            throw new IllegalStateException(e);
        }
        return all.toByteArray();
    }

    private static void readUntilHungUp(RandomAccessFile port, byte[] some, ByteArrayOutputStream all) {
        try {
            for (int n = port.read(some); n > 0; n = port.read(some)) {
                all.write(some, 0, n);
            }
        } catch (IOException hungUp) {
            assertTrue(all.size() > 0);
        }
    }
}
