package tautlog.logger.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tautlog.logger.LoggerFolder;
import tautlog.logger.ScriptedPort;
import tautlog.logger.SmallInstrument;

/** What {@code listen} shows to who checks the wiring. */
@Timeout(30)
class LineWatchTest {
    @TempDir
    Path path;

    private final ScriptedPort port = new ScriptedPort();
    private final SmallInstrument instrument = new SmallInstrument(7);

    @Test
    void showsTensionShareShaftAndHookupEachSecond() throws Exception {
        // given: 12 kN on a limit of 20 kN for two and a half seconds, then silence
        feed(25);

        // when
        List<String> lines = shown(5);

        // then: the last second says that nothing is known now
        assertEquals(5, lines.size());
        String said = String.join("\n", lines);
        assertTrue(said.contains("TL-0001  12.0 kN (counts 12000"), said);
        assertTrue(said.contains("60 % of limit  shaft 540 rpm  hookup straight (assumed)"), said);
        assertEquals("TL-0001  no sample in the last second", lines.get(4));
    }

    @Test
    void saysAtLeastWhereTheLimitIsOnlyKnownAsAtMost() throws Exception {
        // given: a choker whose choke angle nobody rated
        Files.writeString(
                LoggerFolder.at(path, "scripted", LoggerFolder.HOST_CLOCK)
                        .path()
                        .resolve("rig.toml"),
                LoggerFolder.RIG.replace("choke_angle_deg = 130", "choke_angle_deg = 60"));
        instrument.selector(2);
        feed(35);

        // then
        String said = String.join("\n", shown(4, path.resolve("rig.toml")));
        assertTrue(said.contains(", at least "), said);
    }

    @Test
    void tellsSilenceFromNoise() throws Exception {
        assertEquals(
                List.of("no instrument heard: nothing comes; check its power, the cable and [instrument] port"),
                shown(1));

        // given: what a wrong baud rate makes of frames
        byte[] noise = instrument.hold(0, 500).take();
        for (int i = 0; i < noise.length; i++) {
            noise[i] = (byte) (noise[i] == 0 ? 0 : noise[i] ^ 0x5a | 1);
        }
        port.bring(noise);
        List<String> lines = shown(2);

        // then
        assertTrue(
                lines.get(1)
                        .startsWith("no instrument heard: what comes is not understood; check [instrument] kind, baud"),
                lines::toString);
        assertTrue(lines.get(1).contains("rejected "), lines::toString);
    }

    @Test
    void recordsNothingAndEndsWhenTheLineIsClosed() throws Exception {
        port.bring(instrument.hold(0, 500).take()).hangUp();

        assertTrue(shown(10).size() < 10);
        assertTrue(Files.notExists(path.resolve("recordings")));
    }

    /** 12 kN, a tenth of a second every tenth of a second. */
    private void feed(int tenths) {
        Thread feed = new Thread(() -> {
            for (int k = 0; k < tenths; k++) {
                port.bring(instrument.hold(1_200_000, 50).take());
                LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(100));
            }
        });
        feed.start();
    }

    private List<String> shown(int lines) throws Exception {
        LoggerFolder.at(path, "scripted", LoggerFolder.HOST_CLOCK);
        return shown(lines, path.resolve("rig.toml"));
    }

    private List<String> shown(int lines, Path rig) throws Exception {
        StringWriter out = new StringWriter();
        assertTrue(Files.exists(rig));
        new LineWatch(new LoggerFolder(path).installation(), port).show(new PrintWriter(out), lines);
        return out.toString().lines().toList();
    }
}
