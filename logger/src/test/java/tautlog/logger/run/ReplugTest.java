package tautlog.logger.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import tautlog.logger.LoggerFolder;
import tautlog.logger.SmallInstrument;
import tautlog.logger.StoredOuting;
import tautlog.logger.port.InstrumentPort;
import tautlog.logger.port.ListedPorts;
import tautlog.logger.port.SerialInstrumentPort;
import tautlog.logger.pty.PseudoTerminal;
import tautlog.logger.run.LoggerRun.Until;

/** An instrument that is unplugged and comes back under another name; pseudo-terminals whose USB identities are made up. */
@Timeout(60)
@EnabledOnOs(value = OS.LINUX, disabledReason = "pseudo-terminals are made on Linux only")
class ReplugTest {
    private static final String IDENTITY = "usb:1a86:55d4:TL0001";
    private static final Duration PATIENCE = Duration.ofSeconds(20);

    @TempDir
    Path path;

    private final SmallInstrument instrument = new SmallInstrument(7);
    private final ListedPorts listed = new ListedPorts();

    @Test
    void goesOnWithTheOutingAtThePathWhereTheDeviceCameBack() throws Exception {
        replug(path.resolve("ttyACM0").toString());
    }

    @Test
    void goesOnWithTheOutingOfTheIdentityThatIsConfigured() throws Exception {
        replug(IDENTITY);
    }

    private void replug(String configured) throws Exception {
        // given
        LoggerFolder folder = LoggerFolder.at(path, configured, LoggerFolder.DEVICE_CLOCK);
        PseudoTerminal first = plug("ttyACM0");
        InstrumentPort port =
                new SerialInstrumentPort(folder.installation().config().line(), listed);
        LoggerRun logger = new LoggerRun(folder.installation(), port, Until.STOPPED, "tautlogd test");
        Thread run = start(logger);
        assertTrue(first.waitForReader(PATIENCE));
        first.write(instrument.hold(0, 500).take());
        assertTrue(first.waitUntilTaken(PATIENCE));
        await(() -> samples(logger) == 500);

        // when: unplugged and plugged in again under another name
        listed.unplug(path.resolve("ttyACM0").toString());
        first.close();
        await(() -> logger.status().hangUps() == 1 && !logger.status().portOpen());
        try (PseudoTerminal second = plug("ttyACM1")) {
            assertTrue(second.waitForReader(PATIENCE));
            second.write(instrument.hold(0, 500).take());
            assertTrue(second.waitUntilTaken(PATIENCE));
            await(() -> samples(logger) == 1_000);

            // then
            assertEquals(
                    configured + " (at " + path.resolve("ttyACM1") + ")",
                    logger.status().port());
            logger.stop();
            run.join();
        }
        List<StoredOuting> outings = StoredOuting.readAll(StoredOuting.only(folder.recordings()));
        assertEquals(1, outings.size());
        assertEquals(instrument.sent(), outings.get(0).counts());
    }

    private PseudoTerminal plug(String name) throws IOException {
        PseudoTerminal terminal = PseudoTerminal.open();
        terminal.linkAt(path.resolve(name));
        listed.plug(path.resolve(name).toString(), IDENTITY);
        return terminal;
    }

    private static long samples(LoggerRun logger) {
        return logger.status().outing().map(outing -> outing.samples()).orElse(0L);
    }

    private static Thread start(LoggerRun logger) {
        Thread thread = new Thread(() -> {
            try {
                logger.run();
            } catch (IOException | InterruptedException e) {
                throw new IllegalStateException(e);
            }
        });
        thread.start();
        return thread;
    }

    private static void await(BooleanSupplier isSo) throws InterruptedException {
        long end = System.nanoTime() + 20_000_000_000L;
        while (!isSo.getAsBoolean()) {
            assertTrue(System.nanoTime() < end, "waited in vain");
            Thread.sleep(10);
        }
    }
}
