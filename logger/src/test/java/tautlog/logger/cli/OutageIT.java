package tautlog.logger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.detect.Finding;
import tautlog.detect.Second;
import tautlog.logger.LoggerFolder;
import tautlog.logger.StoredOuting;
import tautlog.logger.pty.PseudoTerminal;
import tautlog.recording.Outing;
import tautlog.recording.Recording;

/**
 * A long outing, published to a real broker and a real time-series server that are killed, paused, slow, full and cut off at random.
 *
 * <p>A quarter of an hour in half a minute, with the logger's waits hurried fortyfold; ten hours with its real waits with {@code
 * -Dtautlog.outage.hours=10} (about ten minutes).
 */
class OutageIT {
    private static final boolean LONG = Integer.getInteger("tautlog.outage.hours", 0) > 0;
    private static final int SECONDS = LONG ? Integer.getInteger("tautlog.outage.hours") * 3_600 : 900;
    private static final int SECONDS_A_SECOND = LONG ? 100 : 60;
    private static final int HURRY = LONG ? 1 : 40;
    private static final long DELAY_MILLIS = 30_000 / HURRY;
    private static final long STEP_MILLIS = LONG ? 10_000 : 500;
    /**
     * How much more the second half may hold than the first. Chosen: what of the heap's 64 MB has been touched depends on when it is
     * swept, and half a minute is still warming up; something that is kept for each second or each failed try shows within ten hours.
     */
    private static final double MORE_MEGABYTES = LONG ? 12 : 40;

    private static final Duration PATIENCE = Duration.ofSeconds(20);

    @TempDir
    Path folder;

    private final Random random = new Random(Long.getLong("tautlog.outage.seed", 1));
    private final List<String> story = new ArrayList<>();
    private final List<Integer> kinds = new ArrayList<>();
    private final List<AutoCloseable> opened = new ArrayList<>();
    private Optional<SmallDisk> disk = Optional.empty();
    private int brokerPort;
    private int influxPort;
    private long mostKilobytes;
    private Optional<ResidentMemory> memory = Optional.empty();

    private <T extends AutoCloseable> T keep(T thing) {
        opened.add(0, thing);
        return thing;
    }

    @AfterEach
    void close() throws Exception {
        StartedDaemon.killAll();
        for (AutoCloseable thing : opened) {
            thing.close();
        }
    }

    @Test
    void bringsEachSecondAndFindingOnceWhateverHappensToTheServers() throws Exception {
        TestServer.require("mosquitto");
        TestServer.require("influxd");
        TestServer broker = broker();
        TestServer influx = influx();
        int brokerDoor = TestServer.freePort();
        int influxDoor = TestServer.freePort();
        int shimPort = TestServer.freePort();
        WriteShim shim = keep(new WriteShim(shimPort, influxPort));
        Network toBroker = keep(new Network(brokerDoor, brokerPort));
        Network toInflux = keep(new Network(influxDoor, shimPort));
        Consumer consumer = keep(new Consumer(brokerPort));
        consumer.subscribe();
        toBroker.connect();
        toInflux.connect();
        LoggerFolder logger = LoggerFolder.at(folder, "./port", LoggerFolder.DEVICE_CLOCK);
        Files.writeString(logger.config(), LoggerFolder.publish(brokerDoor, influxDoor), StandardOpenOption.APPEND);

        try (PseudoTerminal terminal = PseudoTerminal.open()) {
            StartedDaemon daemon = start(logger, terminal);
            memory = Optional.of(keep(ResidentMemory.watch(daemon)));
            Thread outing = outing(terminal, SECONDS);
            while (outing.isAlive()) {
                trouble(broker, influx, toBroker, toInflux, consumer, shim);
                mostKilobytes = Math.max(mostKilobytes, daemon.residentKilobytes());
            }
            story.add("all is recorded");
            assertTrue(terminal.waitUntilTaken(PATIENCE), daemon.stderr());
            daemon.terminate();
            assertEquals(128 + 15, daemon.exitCode(), daemon.stderr()); // ended by SIGTERM
            assertTrue(daemon.stderr().contains("recording closed"), daemon.stderr());
        }
        Path file = StoredOuting.only(logger.recordings());
        nextDay(logger, consumer, shim, file);
        compare(consumer, shim, file);
    }

    private StartedDaemon start(LoggerFolder logger, PseudoTerminal terminal) throws Exception {
        terminal.linkAt(folder.resolve("port"));
        StartedDaemon daemon = StartedDaemon.startAs(
                List.of("env", "JAVA_TOOL_OPTIONS=-Dtautlog.publish.hurry=" + HURRY),
                folder,
                "run",
                "--config",
                logger.config().toString());
        assertTrue(terminal.waitForReader(PATIENCE), daemon.stderr());
        return daemon;
    }

    /** What was not published when the logger was stopped is when it starts again. */
    private void nextDay(LoggerFolder logger, Consumer consumer, WriteShim shim, Path file) throws Exception {
        String config = Files.readString(logger.config());
        Files.writeString(logger.config(), config.replace("2026-05-04", "2026-05-06"));
        List<String> findings = findings(file);
        try (PseudoTerminal terminal = PseudoTerminal.open()) {
            StartedDaemon daemon = start(logger, terminal);
            outing(terminal, 5).join();
            String last = findings.get(findings.size() - 1);
            long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(LONG ? 1_800 : 60);
            while (!consumer.positions("s").contains(id(file) + "/0/s/" + (SECONDS - 1))
                    || !consumer.positions("f").contains(last)
                    || !shim.acknowledged("line").contains(id(file) + "/0/s/" + (SECONDS - 1))
                    || !shim.acknowledged("finding").contains(last)) {
                assertTrue(
                        System.nanoTime() < end,
                        () -> "not all came: " + consumer.positions("s").size() + " " + story + "\n" + stderr(daemon));
                mostKilobytes = Math.max(mostKilobytes, daemon.residentKilobytes());
                Thread.sleep(200);
            }
            daemon.kill();
        }
    }

    private static String id(Path file) throws IOException {
        try (Recording recording = Recording.open(file)) {
            return recording.id();
        }
    }

    private TestServer broker() throws Exception {
        brokerPort = TestServer.freePort();
        Path config = folder.resolve("mosquitto.conf");
        Files.writeString(
                config,
                "listener " + brokerPort + " 127.0.0.1\nallow_anonymous true\nmax_inflight_messages 0\n"
                        + "max_queued_messages 0\n");
        return keep(new TestServer(
                        folder.resolve("mosquitto.log"), brokerPort, List.of("mosquitto", "-c", config.toString())))
                .start();
    }

    private TestServer influx() throws Exception {
        influxPort = TestServer.freePort();
        Path data = Files.createDirectories(folder.resolve("series"));
        if ("root".equals(System.getProperty("user.name"))) {
            disk = Optional.of(keep(SmallDisk.mount(data, LONG ? 256 : 48)));
        }
        TestServer influx = keep(InfluxOne.in(folder, data, influxPort)).start();
        InfluxOne.createDatabase(influxPort);
        return influx;
    }

    private static Thread outing(PseudoTerminal terminal, int seconds) {
        Thread thread = new Thread(() -> send(terminal, seconds), "instrument");
        thread.setDaemon(true);
        thread.start();
        return thread;
    }

    private static void send(PseudoTerminal terminal, int seconds) {
        LongOuting instrument = new LongOuting();
        long began = System.nanoTime();
        try {
            for (int second = 0; second < seconds; second++) {
                terminal.write(instrument.nextSecond());
                long due = began + (second + 1) * 1_000_000_000L / SECONDS_A_SECOND;
                TimeUnit.NANOSECONDS.sleep(Math.max(0, due - System.nanoTime()));
            }
        } catch (IOException | InterruptedException broken) {
            throw new AssertionError(broken);
        }
    }

    private void trouble(
            TestServer broker, TestServer influx, Network toBroker, Network toInflux, Consumer consumer, WriteShim shim)
            throws Exception {
        if (kinds.isEmpty()) {
            kinds.addAll(List.of(0, 1, 2, 3, 4, 5, 6, 7, 8));
            Collections.shuffle(kinds, random); // each comes once before one comes again
        }
        int kind = kinds.remove(0);
        story.add("trouble " + kind);
        switch (kind) {
            case 0 -> {
                broker.kill();
                toBroker.cut(); // nobody may publish before the consumer is back: this broker keeps nothing for it
                rest();
                broker.start();
                consumer.subscribe();
                toBroker.connect();
            }
            case 1 -> {
                influx.kill();
                rest();
                influx.start();
            }
            case 2 -> {
                broker.pause();
                rest();
                broker.goOn();
            }
            case 3 -> {
                influx.pause();
                rest();
                influx.goOn();
            }
            case 4, 5 -> {
                Network network = kind == 4 ? toBroker : toInflux;
                network.cut();
                rest();
                network.connect();
            }
            case 6, 7 -> {
                Network network = kind == 6 ? toBroker : toInflux;
                network.delay(DELAY_MILLIS);
                Thread.sleep(2 * DELAY_MILLIS);
                network.delay(0);
            }
            default -> fillDisk(influx, shim);
        }
        rest();
    }

    private void fillDisk(TestServer influx, WriteShim shim) throws Exception {
        if (disk.isPresent()) {
            if (!story.contains("the disk was full")) {
                holdsWhatItAcknowledged(shim);
            }
            story.add("the disk was full");
            disk.get().fillUpTo(0);
            rest();
            influx.kill();
            disk.get().free();
            influx.start();
        }
    }

    /** True until its disk was full for the first time. */
    private void holdsWhatItAcknowledged(WriteShim shim) throws Exception {
        for (String measurement : List.of("line", "finding")) {
            List<String> acknowledged = shim.acknowledged(measurement);
            List<String> held = InfluxOne.positions(influxPort, measurement);
            assertTrue(new HashSet<>(held).containsAll(acknowledged), () -> measurement + " " + story);
            assertEquals(held.size(), new HashSet<>(held).size(), "each point once");
        }
    }

    private void rest() throws InterruptedException {
        Thread.sleep(STEP_MILLIS / 2 + random.nextInt((int) STEP_MILLIS));
    }

    private static String stderr(StartedDaemon daemon) {
        try {
            return daemon.stderr();
        } catch (IOException none) {
            return "";
        }
    }

    private void compare(Consumer consumer, WriteShim shim, Path file) throws Exception {
        List<String> seconds = new ArrayList<>();
        try (Recording recording = Recording.open(file)) {
            assertEquals(List.of(), recording.verify().damages());
            Outing outing = recording.outings().get(0);
            assertEquals((long) SECONDS * LongOuting.HERTZ, outing.samples(), "every sample sent is recorded");
            for (Second second : recording.seconds(outing)) {
                seconds.add(recording.id() + "/0/s/" + second.index());
            }
            List<Finding> findings = recording.findings(outing);
            assertTrue(
                    findings.stream()
                            .noneMatch(finding -> finding instanceof Finding.Trouble trouble
                                    && trouble.trouble() == Finding.TroubleKind.GAP),
                    "no gap");
            assertTrue(
                    findings.stream().filter(Finding.Overload.class::isInstance).count() >= SECONDS / 60,
                    "an overload a minute, as the instrument made them");
            assertEquals(SECONDS, seconds.size());
            List<String> said = findings(file);
            assertEquals(findings.size(), said.size());
            assertEquals(seconds, of(file, consumer.positions("s")), story::toString);
            assertEquals(said, of(file, consumer.positions("f")), story::toString);
            assertEquals(seconds, of(file, shim.acknowledged("line")), story::toString);
            assertEquals(said, of(file, shim.acknowledged("finding")), story::toString);
            if (!story.contains("the disk was full")) {
                holdsWhatItAcknowledged(shim);
            }
        }
        ResidentMemory.Halves halves = memory.orElseThrow().halves();
        System.out.println("outage: " + SECONDS + " s, troubles " + (story.size() - 1) + ", messages "
                + consumer.messages() + ", resident at most " + mostKilobytes / 1024 + " MB, " + halves);
        assertTrue(halves.moreMegabytes() <= MORE_MEGABYTES, halves::toString);
        assertTrue(mostKilobytes < 250 * 1024, () -> "resident " + mostKilobytes + " kB");
    }

    /** Those of the outing under test. */
    private static List<String> of(Path file, List<String> positions) throws IOException {
        String outing = id(file) + "/0/";
        return positions.stream()
                .filter(position -> position.startsWith(outing))
                .toList();
    }

    /** Straight from the table. */
    private static List<String> findings(Path file) throws Exception {
        String id = id(file);
        List<String> found = new ArrayList<>();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("SELECT id FROM finding WHERE outing = 0 ORDER BY id")) {
            while (rows.next()) {
                found.add(id + "/0/f/" + rows.getLong(1));
            }
        }
        return found;
    }
}
