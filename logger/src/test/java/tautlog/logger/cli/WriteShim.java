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
import java.time.Duration;
import java.util.concurrent.Executors;

/** Maps the client's {@code /api/v2/write} to the {@code /write} of a server of version 1, answers and all. */
final class WriteShim implements AutoCloseable {
    private final HttpServer http;
    private final HttpClient client = HttpClient.newBuilder()
            .connectTimeout(Duration.ofSeconds(2))
            .version(HttpClient.Version.HTTP_1_1)
            .build();
    private final int server;

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
            boolean empty = answer.body().length == 0;
            exchange.sendResponseHeaders(answer.statusCode(), empty ? -1 : answer.body().length);
            if (!empty) {
                exchange.getResponseBody().write(answer.body());
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void close() {
        http.stop(0);
    }
}
