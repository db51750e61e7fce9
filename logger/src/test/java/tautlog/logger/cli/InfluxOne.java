package tautlog.logger.cli;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Debian's influxdb 1.6 with one database, {@code winches}. */
final class InfluxOne {
    private InfluxOne() {}

    static TestServer in(Path folder, Path data, int port) throws IOException {
        TestServer.require("influxd");
        Path config = folder.resolve("influxd.conf");
        Files.writeString(config, """
                reporting-disabled = true
                bind-address = "127.0.0.1:%d"
                [meta]
                dir = "%s/meta"
                [data]
                dir = "%s/data"
                wal-dir = "%s/wal"
                query-log-enabled = false
                [http]
                bind-address = "127.0.0.1:%d"
                log-enabled = false
                """.formatted(TestServer.freePort(), data, data, data, port));
        return new TestServer(folder.resolve("influxd.log"), port, List.of("influxd", "-config", config.toString()));
    }

    static void createDatabase(int port) throws IOException, InterruptedException {
        ask(port, "CREATE DATABASE winches");
    }

    private static JsonObject ask(int port, String query) throws IOException, InterruptedException {
        String words = URLEncoder.encode(query, StandardCharsets.UTF_8);
        HttpRequest request = HttpRequest.newBuilder(
                        URI.create("http://127.0.0.1:" + port + "/query?db=winches&epoch=ns&q=" + words))
                .POST(HttpRequest.BodyPublishers.noBody())
                .build();
        HttpResponse<String> answer = HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofString());
        return JsonParser.parseString(answer.body()).getAsJsonObject();
    }

    /** The positions of all points of a measurement, by time. */
    static List<String> positions(int port, String measurement) throws IOException, InterruptedException {
        JsonObject result = ask(port, "SELECT position FROM " + measurement)
                .getAsJsonArray("results")
                .get(0)
                .getAsJsonObject();
        List<String> positions = new ArrayList<>();
        JsonArray series = result.getAsJsonArray("series");
        if (series != null) {
            for (JsonElement row : series.get(0).getAsJsonObject().getAsJsonArray("values")) {
                positions.add(row.getAsJsonArray().get(1).getAsString());
            }
        }
        return positions;
    }
}
