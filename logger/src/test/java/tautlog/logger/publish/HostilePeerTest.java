package tautlog.logger.publish;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tautlog.logger.config.PublishChoice;
import tautlog.logger.config.SecretFile;
import tautlog.logger.publish.influx.InfluxOutlet;
import tautlog.logger.publish.mqtt.MqttOutlet;

/** Brokers and servers that mean harm cost one failed try, and little memory. */
class HostilePeerTest {
    private static final long ANSWER_MILLIS = 2_000;
    private static final Duration LONGEST = Duration.ofSeconds(30);
    private static final List<Item> ITEMS = List.of(new Item.OfSecond(
            "00ff/0/s/1", 0, 1, 1_777_881_600_000_000L, 1, 2, 3, 0.5, OptionalDouble.of(540), "straight", 0));
    private static final byte[] CONNACK = {0x20, 2, 0, 0};

    @TempDir
    Path folder;

    private Outlet mqtt(int port) {
        return new MqttOutlet(
                new PublishChoice.Mqtt("tcp://127.0.0.1:" + port, Optional.empty(), Optional.empty(), Optional.empty()),
                "upper-landing",
                ANSWER_MILLIS);
    }

    private Outlet influx(int port) throws IOException {
        Path token = folder.resolve("token");
        Files.writeString(token, "hunter2\n");
        Files.setPosixFilePermissions(token, PosixFilePermissions.fromString("rw-------"));
        return new InfluxOutlet(
                new PublishChoice.Influx(
                        "http://127.0.0.1:" + port,
                        "outfit",
                        "winches",
                        Optional.of(new SecretFile(token)),
                        Optional.empty()),
                "upper-landing",
                ANSWER_MILLIS);
    }

    private static Away away(Outlet outlet) {
        try (outlet) {
            return assertTimeoutPreemptively(
                    LONGEST, () -> assertThrows(Away.class, () -> outlet.deliver(ITEMS)), "it must give up");
        }
    }

    private static void zerosForEver(OutputStream out) throws IOException {
        byte[] zeros = new byte[64 * 1024];
        while (true) {
            out.write(zeros);
        }
    }

    private static void readHead(InputStream in) throws IOException {
        int[] last = new int[4];
        for (int b = in.read(); b >= 0; b = in.read()) {
            System.arraycopy(last, 1, last, 0, 3);
            last[3] = b;
            if (last[0] == '\r' && last[1] == '\n' && last[2] == '\r' && last[3] == '\n') {
                return;
            }
        }
    }

    @Test
    void aBrokerThatAnnouncesAHugePacketIsHungUpOnBeforeItComes() throws Exception {
        try (HostileServer broker = new HostileServer((in, out) -> {
            out.write(CONNACK);
            out.write(new byte[] {0x30, (byte) 0xff, (byte) 0xff, (byte) 0xff, 0x7f}); // 256 MB
            zerosForEver(out);
        })) {
            away(mqtt(broker.port()));
            assertTrue(broker.sentBytes() < 16 << 20, () -> broker.sentBytes() + " bytes taken");
        }
    }

    @Test
    void aBrokerThatAcknowledgesWithoutEndIsHungUpOn() throws Exception {
        try (HostileServer broker = new HostileServer((in, out) -> {
            out.write(CONNACK);
            byte[] acknowledgements = new byte[64 * 1024];
            for (int i = 0; i < acknowledgements.length; i += 4) {
                acknowledgements[i] = 0x40;
                acknowledgements[i + 1] = 2;
                acknowledgements[i + 2] = 0x7f;
            }
            while (true) {
                out.write(acknowledgements);
            }
        })) {
            away(mqtt(broker.port()));
            assertTrue(broker.sentBytes() < 16 << 20, () -> broker.sentBytes() + " bytes taken");
        }
    }

    @Test
    void aBrokerThatSaysNothingOrReadsNothingIsLeft() throws Exception {
        try (HostileServer mute = new HostileServer((in, out) -> in.transferTo(OutputStream.nullOutputStream()));
                HostileServer deaf = new HostileServer((in, out) -> {
                    out.write(CONNACK);
                    sleep();
                })) {
            away(mqtt(mute.port()));
            away(mqtt(deaf.port()));
        }
    }

    private static void sleep() {
        try {
            Thread.sleep(60_000);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    @Test
    void anAnswerWithoutEndIsCutOff() throws Exception {
        try (HostileServer server = new HostileServer((in, out) -> {
            readHead(in);
            out.write("HTTP/1.1 500 No\r\nContent-Type: text/plain\r\n\r\n".getBytes(StandardCharsets.US_ASCII));
            zerosForEver(out);
        })) {
            away(influx(server.port()));
            assertTrue(server.sentBytes() < 16 << 20, () -> server.sentBytes() + " bytes taken");
        }
    }

    @Test
    void aPackedBombIsNotUnpacked() throws Exception {
        java.io.ByteArrayOutputStream packed = new java.io.ByteArrayOutputStream();
        try (OutputStream gzip = new java.util.zip.GZIPOutputStream(packed)) {
            gzip.write(new byte[32 << 20]); // 32 kB packed
        }
        try (HostileServer server = new HostileServer((in, out) -> {
            readHead(in);
            out.write(("HTTP/1.1 500 No\r\nContent-Encoding: gzip\r\nContent-Length: " + packed.size() + "\r\n\r\n")
                    .getBytes(StandardCharsets.US_ASCII));
            out.write(packed.toByteArray());
        })) {
            Away away = away(influx(server.port()));
            assertTrue(String.valueOf(away.getMessage()).length() < 1_000);
        }
    }

    @Test
    void anAnswerThatDripsIsGivenUpAfterATime() throws Exception {
        try (HostileServer server = new HostileServer((in, out) -> {
            readHead(in);
            out.write("HTTP/1.1 500 No\r\n".getBytes(StandardCharsets.US_ASCII));
            for (int i = 0; i < 600; i++) {
                out.write(("X-" + i + ": drip\r\n").getBytes(StandardCharsets.US_ASCII));
                pause();
            }
        })) {
            away(influx(server.port()));
        }
    }

    private static void pause() {
        try {
            Thread.sleep(100);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    @Test
    void aRedirectIsNotFollowedAndGetsNoToken() throws Exception {
        try (HostileServer thief = new HostileServer(
                        (in, out) -> out.write("HTTP/1.1 204 No\r\n\r\n".getBytes(StandardCharsets.US_ASCII)));
                HostileServer server = new HostileServer((in, out) -> {
                    readHead(in);
                    out.write(("HTTP/1.1 307 Go\r\nLocation: http://127.0.0.1:" + thief.port()
                                    + "/\r\nContent-Length: 0\r\n\r\n")
                            .getBytes(StandardCharsets.US_ASCII));
                })) {
            away(influx(server.port()));
            assertTrue(thief.sentBytes() == 0, "nobody went there");
        }
    }

    @Test
    void whatIsWrongIsSaidInWordsWithoutTheSecret() throws Exception {
        try (HostileServer server = new HostileServer((in, out) -> {
            readHead(in);
            out.write("HTTP/1.1 401 No\r\nContent-Length: 0\r\n\r\n".getBytes(StandardCharsets.US_ASCII));
        })) {
            String words = String.valueOf(away(influx(server.port())).getMessage());
            assertTrue(words.contains("token_file"), words);
            assertFalse(words.contains("hunter2"), words);
        }
    }

    @Test
    void aServerThatRepeatsTheTokenDoesNotBringItIntoOurWords() throws Exception {
        String echo = "{\"code\":\"forbidden\",\"message\":\"got Authorization: Token hunter2\"}";
        try (HostileServer server = new HostileServer((in, out) -> {
            readHead(in);
            out.write(("HTTP/1.1 403 No\r\nContent-Type: application/json\r\nContent-Length: " + echo.length()
                            + "\r\n\r\n" + echo)
                    .getBytes(StandardCharsets.US_ASCII));
        })) {
            String words = String.valueOf(away(influx(server.port())).getMessage());
            assertTrue(words.contains("got Authorization"), words);
            assertFalse(words.contains("hunter2"), words);
        }
    }

    @Test
    void aServerThatCallsItMalformedIsToldApart() throws Exception {
        try (HostileServer server = new HostileServer((in, out) -> {
                    readHead(in);
                    out.write("HTTP/1.1 400 No\r\nContent-Length: 0\r\n\r\n".getBytes(StandardCharsets.US_ASCII));
                });
                Outlet outlet = influx(server.port())) {
            assertThrows(Refused.class, () -> outlet.deliver(ITEMS));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"rw-r--r--", "rw-r-----", "rw--w----", "rw-----w-"})
    void aSecretThatIsOpenToOthersThanItsOwnerIsRefused(String rights) throws IOException {
        Path secret = folder.resolve("secret");
        Files.writeString(secret, "hunter2");
        Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString(rights));

        IOException refusal = assertThrows(IOException.class, () -> new SecretFile(secret).read());

        assertTrue(String.valueOf(refusal.getMessage()).contains("chmod 600"), refusal::toString);
        assertFalse(refusal.toString().contains("hunter2"));
    }
}
