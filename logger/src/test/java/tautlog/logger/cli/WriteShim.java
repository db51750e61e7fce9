package tautlog.logger.cli;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Executors;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Maps the client's {@code /api/v2/write} to the {@code /write} of a server of version 1, answers and all, and keeps what that
 * server acknowledged: after a full disk it loses what it acknowledged at its next start (a torn entry in its own log).
 */
final class WriteShim implements AutoCloseable {
    private static final Pattern POINT = Pattern.compile("(?m)^(line|finding|meter),.*?position=\"([^\"]+)\"");

    private final HttpServer http;
    private final HttpClient client = HttpClient.newBuilder()
            .connectTimeout(Duration.ofSeconds(2))
            .version(HttpClient.Version.HTTP_1_1)
            .build();
    private final int server;
    private final Set<String> acknowledged = Collections.synchronizedSet(new LinkedHashSet<>());

    WriteShim(int port, int server) throws IOException {
        this.server = server;
        http = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), port), 0);
        http.setExecutor(Executors.newCachedThreadPool(work -> {
            Thread thread = new Thread(work, "test shim");
            thread.setDaemon(true);
            return thread;
        }));
        http.createContext("/api/v2/write", this::write);
        http.start();
    }

    private void write(HttpExchange exchange) throws IOException {
        try (exchange) {
            byte[] body = exchange.getRequestBody().readAllBytes();
            HttpResponse<byte[]> answer = client.send(
                    HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + server + "/write?db=winches&precision=ns"))
                            .timeout(Duration.ofSeconds(90))
                            .POST(HttpRequest.BodyPublishers.ofByteArray(body))
                            .build(),
                    HttpResponse.BodyHandlers.ofByteArray());
            if (answer.statusCode() == 204) {
                keep(new String(body, StandardCharsets.UTF_8));
            }
            boolean empty = answer.body().length == 0;
            exchange.sendResponseHeaders(answer.statusCode(), empty ? -1 : answer.body().length);
            if (!empty) {
                exchange.getResponseBody().write(answer.body());
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    private void keep(String lines) {
        Matcher point = POINT.matcher(lines);
        while (point.find()) {
            acknowledged.add(point.group(1) + " " + point.group(2));
        }
    }

    /** The positions of the points of a measurement, each once, in the order of their first acknowledgement. */
    List<String> acknowledged(String measurement) {
        synchronized (acknowledged) {
            return acknowledged.stream()
                    .filter(point -> point.startsWith(measurement + " "))
                    .map(point -> point.substring(measurement.length() + 1))
                    .toList();
        }
    }

    @Override
    public void close() {
        http.stop(0);
    }
}
