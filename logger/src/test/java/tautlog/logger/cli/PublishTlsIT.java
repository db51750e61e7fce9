package tautlog.logger.cli;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.logger.config.PublishChoice;
import tautlog.logger.publish.Away;
import tautlog.logger.publish.Item;
import tautlog.logger.publish.mqtt.MqttOutlet;

/** TLS with a real broker: the right certificate is taken, every other refused. Certificates are made by openssl for the test. */
class PublishTlsIT {
    private static final List<Item> ITEMS = List.of(new Item.OfSecond(
            "00ff/0/s/1", 0, 1, 1_777_881_600_000_000L, 1, 2, 3, 0.5, OptionalDouble.of(540), "straight", 0));

    @TempDir
    Path folder;

    private Optional<TestServer> broker = Optional.empty();

    @BeforeEach
    void makeAuthorities() throws Exception {
        TestServer.require("mosquitto");
        TestServer.require("openssl");
        authority("ours");
        authority("theirs");
    }

    @AfterEach
    void stop() {
        broker.ifPresent(TestServer::close);
    }

    private void authority(String name) throws Exception {
        openssl(
                "req",
                "-x509",
                "-newkey",
                "rsa:2048",
                "-nodes",
                "-days",
                "2",
                "-subj",
                "/CN=" + name,
                "-keyout",
                name + ".key",
                "-out",
                name + ".pem");
    }

    /** A certificate for {@code host}, from {@code ours}. */
    private void certificate(String host, String... validity) throws Exception {
        Files.writeString(folder.resolve("san.cnf"), "subjectAltName=" + host + "\n");
        openssl(
                "req",
                "-newkey",
                "rsa:2048",
                "-nodes",
                "-subj",
                "/CN=broker",
                "-keyout",
                "broker.key",
                "-out",
                "broker.csr");
        List<String> sign = new java.util.ArrayList<>(List.of(
                "x509",
                "-req",
                "-in",
                "broker.csr",
                "-CA",
                "ours.pem",
                "-CAkey",
                "ours.key",
                "-CAcreateserial",
                "-extfile",
                "san.cnf",
                "-out",
                "broker.pem"));
        sign.addAll(List.of(validity));
        openssl(sign.toArray(String[]::new));
    }

    private void openssl(String... arguments) throws IOException, InterruptedException {
        List<String> command = new java.util.ArrayList<>(List.of("openssl"));
        command.addAll(List.of(arguments));
        Process process = new ProcessBuilder(command)
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(process.waitFor() == 0, said);
    }

    private int start() throws Exception {
        int port = TestServer.freePort();
        Files.writeString(folder.resolve("mosquitto.conf"), """
                user root
                listener %d 127.0.0.1
                allow_anonymous true
                certfile %s/broker.pem
                keyfile %s/broker.key
                """.formatted(port, folder, folder));
        broker = Optional.of(new TestServer(
                        folder.resolve("mosquitto.log"),
                        port,
                        List.of(
                                "mosquitto",
                                "-c",
                                folder.resolve("mosquitto.conf").toString()))
                .start());
        return port;
    }

    private void deliver(int port, Optional<String> authority) throws Exception {
        assertTrue(InetAddress.getByName("localhost").isLoopbackAddress());
        PublishChoice.Mqtt choice = new PublishChoice.Mqtt(
                "ssl://localhost:" + port,
                Optional.empty(),
                Optional.empty(),
                authority.map(name -> folder.resolve(name + ".pem")));
        try (MqttOutlet outlet = new MqttOutlet(choice, "upper-landing", 10_000)) {
            outlet.deliver(ITEMS);
        }
    }

    private void assertRefused(int port, Optional<String> authority, String says) {
        Away refusal = assertThrows(Away.class, () -> deliver(port, authority));
        assertTrue(String.valueOf(refusal.getMessage()).contains(says), refusal::toString);
    }

    @Test
    void takesTheRightCertificateAndRefusesThoseOfOtherAuthorities() throws Exception {
        certificate("DNS:localhost", "-days", "2");
        int port = start();

        deliver(port, Optional.of("ours"));

        assertRefused(port, Optional.of("theirs"), "certification path");
        assertRefused(port, Optional.empty(), "certification path");
    }

    @Test
    void refusesTheCertificateOfAnotherHost() throws Exception {
        certificate("DNS:broker.example", "-days", "2");

        assertRefused(start(), Optional.of("ours"), "localhost");
    }

    @Test
    void refusesAnExpiredCertificate() throws Exception {
        Files.createDirectories(folder.resolve("demoCA/newcerts"));
        Files.writeString(folder.resolve("index.txt"), "");
        Files.writeString(folder.resolve("serial"), "01\n");
        Files.writeString(folder.resolve("ca.cnf"), """
                [ca]
                default_ca = one
                [one]
                database = index.txt
                serial = serial
                new_certs_dir = demoCA/newcerts
                default_md = sha256
                policy = any
                [any]
                commonName = supplied
                """);
        Files.writeString(folder.resolve("san.cnf"), "subjectAltName=DNS:localhost\n");
        openssl(
                "req",
                "-newkey",
                "rsa:2048",
                "-nodes",
                "-subj",
                "/CN=broker",
                "-keyout",
                "broker.key",
                "-out",
                "broker.csr");
        openssl(
                "ca",
                "-batch",
                "-config",
                "ca.cnf",
                "-in",
                "broker.csr",
                "-cert",
                "ours.pem",
                "-keyfile",
                "ours.key",
                "-startdate",
                "20200101000000Z",
                "-enddate",
                "20210101000000Z",
                "-extfile",
                "san.cnf",
                "-out",
                "broker.pem",
                "-notext");

        assertRefused(start(), Optional.of("ours"), "NotAfter");
    }
}
