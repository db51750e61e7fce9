package tautlog.desk.web;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import tautlog.desk.notes.NoteBook;
import tautlog.desk.season.SeasonWatch;

/**
 * The server of the evening view. On loopback by default, IPv4 and IPv6; elsewhere only with a token. At most 64 connections, each
 * read in a thread of its own for 10 s at most: a slow or oversized request costs itself alone. What is heavy is bounded in {@link Api}.
 */
public final class WebServer implements AutoCloseable {
    /** One for each connection: the JDK's server reads a slow request in a thread of the pool. */
    private static final int THREADS = 64;

    private static final int QUEUE = 64;
    private static final int LONGEST_BODY = 16_384;

    private static final Map<String, String> HEADERS = Map.of(
            "Content-Security-Policy",
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self';"
                    + " base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
            "X-Content-Type-Options",
            "nosniff",
            "X-Frame-Options",
            "DENY",
            "Referrer-Policy",
            "no-referrer",
            "Cross-Origin-Resource-Policy",
            "same-origin",
            "Cross-Origin-Opener-Policy",
            "same-origin",
            "Cache-Control",
            "no-store");

    static {
        // read by the JDK's server when it is loaded; seconds, counts, bytes
        limit("sun.net.httpserver.maxReqTime", "10");
        limit("sun.net.httpserver.maxRspTime", "30");
        limit("sun.net.httpserver.idleInterval", "30");
        limit("sun.net.httpserver.maxReqHeaders", "64");
        limit("sun.net.httpserver.maxReqHeaderSize", "16384");
        limit("jdk.httpserver.maxConnections", "64");
    }

    private static void limit(String property, String value) {
        if (System.getProperty(property) == null) {
            System.setProperty(property, value);
        }
    }

    private final List<HttpServer> servers = new ArrayList<>();
    private final ThreadPoolExecutor threads;
    private final PageFiles files = new PageFiles();
    private final Api api;
    private final Guard guard;
    private final Consumer<Throwable> bugs;
    private final int port;

    /**
     * Begins to answer.
     *
     * @param bind where to listen; empty for loopback
     * @param port 0 for any that is free
     * @param token needed when {@code bind} is given
     * @param bugs told what was not expected; the request gets a 500
     */
    public WebServer(
            SeasonWatch watch,
            NoteBook notes,
            Optional<InetAddress> bind,
            int port,
            Optional<String> token,
            Consumer<Throwable> bugs)
            throws IOException {
        if (bind.isPresent() && token.isEmpty()) {
            throw new IllegalArgumentException("elsewhere than on loopback a token is needed");
        }
        this.bugs = bugs;
        api = new Api(watch, notes);
        threads = new ThreadPoolExecutor(THREADS, THREADS, 30, TimeUnit.SECONDS, new ArrayBlockingQueue<>(QUEUE));
        threads.allowCoreThreadTimeOut(true);
        InetAddress first = bind.orElse(InetAddress.getByAddress(new byte[] {127, 0, 0, 1}));
        servers.add(listen(first, port));
        this.port = servers.get(0).getAddress().getPort();
        guard = new Guard(this.port, token);
        if (bind.isEmpty()) {
            alsoOnIpv6();
        }
        for (HttpServer server : servers) {
            server.setExecutor(threads);
            server.createContext("/", this::handle);
            server.start();
        }
    }

    private static HttpServer listen(InetAddress address, int port) throws IOException {
        return HttpServer.create(new InetSocketAddress(address, port), 16);
    }

    private void alsoOnIpv6() {
        try {
            byte[] loopback = new byte[16];
            loopback[15] = 1;
            servers.add(listen(InetAddress.getByAddress(loopback), port));
        } catch (IOException e) {
            return; // a computer without IPv6, or the port is taken there
        }
    }

    public int port() {
        return port;
    }

    private void handle(HttpExchange exchange) throws IOException {
        try (exchange) {
            Answer answer;
            try {
                answer = answer(exchange);
            } catch (RefusedException e) {
                answer = e.answer();
            } catch (IOException e) {
                answer = Answer.text(503, "It cannot be read now: " + e.getMessage());
            } catch (RuntimeException | Error bug) {
                bugs.accept(bug);
                answer = Answer.text(500, "This is a bug in tautlog; it was written to the program's error output.");
            }
            send(exchange, answer);
        }
    }

    private Answer answer(HttpExchange exchange) throws RefusedException, IOException {
        String method = exchange.getRequestMethod();
        String path = exchange.getRequestURI().getRawPath();
        Optional<String> query = Optional.ofNullable(exchange.getRequestURI().getRawQuery());
        if (guard.needsToken()
                && "/".equals(path)
                && query.isPresent()
                && query.get().startsWith("token=")) {
            return firstVisit(query.get().substring("token=".length()));
        }
        guard.check(method, exchange.getRequestURI(), exchange.getRequestHeaders());
        boolean isRead = method.equals("GET") || method.equals("HEAD");
        Optional<Answer> file = path == null ? Optional.empty() : files.at(path);
        if (file.isPresent() && isRead) {
            return file.get();
        }
        if (path == null || !(file.isPresent() || api.has(path))) {
            throw new RefusedException(404, "There is nothing here.");
        }
        if (method.equals("POST") && api.takes(path)) {
            return api.post(path, body(exchange));
        }
        if (!isRead || file.isPresent()) {
            String allowed = api.takes(path) ? "GET, HEAD, POST" : "GET, HEAD";
            throw new RefusedException(405, "Allowed here: " + allowed + ".", "Allow", allowed);
        }
        return api.get(path, Query.parse(query));
    }

    /** The token leaves the address bar for a cookie that no script can read and no other site can make use of. */
    private Answer firstVisit(String given) throws RefusedException {
        if (!guard.isToken(given)) {
            throw new RefusedException(401, "The token is not the one that tautlog view printed when it started.");
        }
        return Answer.text(303, "Go to /.")
                .with("Location", "/")
                .with("Set-Cookie", guard.cookieName() + "=" + given + "; HttpOnly; SameSite=Strict; Path=/");
    }

    private static String body(HttpExchange exchange) throws RefusedException, IOException {
        byte[] bytes = exchange.getRequestBody().readNBytes(LONGEST_BODY + 1);
        if (bytes.length > LONGEST_BODY) {
            throw new RefusedException(413, "More than " + LONGEST_BODY + " bytes.", "Connection", "close");
        }
        return new String(bytes, StandardCharsets.UTF_8);
    }

    private static void send(HttpExchange exchange, Answer answer) throws IOException {
        HEADERS.forEach(exchange.getResponseHeaders()::set);
        answer.headers().forEach(exchange.getResponseHeaders()::set);
        exchange.getResponseHeaders().set("Content-Type", answer.type());
        if (exchange.getRequestMethod().equals("HEAD")) {
            exchange.getResponseHeaders().set("Content-Length", String.valueOf(answer.body().length));
            exchange.sendResponseHeaders(answer.status(), -1);
        } else {
            exchange.sendResponseHeaders(answer.status(), answer.body().length == 0 ? -1 : answer.body().length);
            exchange.getResponseBody().write(answer.body());
        }
    }

    @Override
    public void close() {
        servers.forEach(server -> server.stop(0));
        threads.shutdownNow();
    }
}
