package tautlog.logger.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.google.gson.JsonParser;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.logger.config.PublishChoice;
import tautlog.logger.publish.Item;
import tautlog.logger.publish.influx.InfluxOutlet;

/** A real server that takes the client's writes as they are. */
class PublishSeriesIT {
    @TempDir
    Path folder;

    @Test
    @SuppressWarnings("try") // it only has to be there
    void aServerThatTakesTheClientsWritesHasEachSecond() throws Exception {
        TestServer.require("victoria-metrics");
        int port = TestServer.freePort();
        try (TestServer server = new TestServer(
                        folder.resolve("series.log"),
                        port,
                        List.of(
                                "victoria-metrics",
                                "-httpListenAddr=127.0.0.1:" + port,
                                "-storageDataPath=" + folder.resolve("series"),
                                "-retentionPeriod=100y"))
                .start()) {
            PublishChoice.Influx choice = new PublishChoice.Influx(
                    "http://127.0.0.1:" + port, "outfit", "winches", Optional.empty(), Optional.empty());
            try (InfluxOutlet outlet = new InfluxOutlet(choice, "upper-landing", 10_000)) {
                outlet.deliver(List.of(second(7), second(8)));
            }

            assertEquals("[7,8]", values(port, "line_number"));
            assertEquals("[2.5,2.5]", values(port, "line_mean_n"));
        }
    }

    private static Item second(long index) {
        long micros = 1_777_881_600_000_000L + index * 1_000_000;
        return new Item.OfSecond(
                "00ff/0/s/" + index, 0, index, micros, 1, 2.5, 3, 0.5, OptionalDouble.of(540), "straight", 0);
    }

    /** What the server has of a series; it shows what it was given within a second. */
    private static String values(int port, String series) throws Exception {
        URI address = URI.create("http://127.0.0.1:" + port + "/api/v1/export?match%5B%5D=" + series);
        HttpRequest request = HttpRequest.newBuilder(address).build();
        for (int tries = 0; tries < 50; tries++) {
            String body = HttpClient.newHttpClient()
                    .send(request, HttpResponse.BodyHandlers.ofString())
                    .body();
            if (!body.isBlank()) {
                return JsonParser.parseString(body)
                        .getAsJsonObject()
                        .get("values")
                        .toString();
            }
            Thread.sleep(200);
        }
        return "nothing";
    }
}
