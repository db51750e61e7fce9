package tautlog.desk.web;

import com.sun.net.httpserver.Headers;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Who may ask. Another site's page in the same browser may not: not by a name that it points at this computer (the Host header is a loopback
 * address, or an address as figures, never a foreign name), not by a request across origins. Elsewhere than on loopback a token is needed.
 */
final class Guard {
    /** Longer than any address of ours. */
    static final int LONGEST_ADDRESS = 2_048;

    private static final Pattern HOST =
            Pattern.compile("(\\[[0-9a-fA-F:.]{2,45}\\]|[0-9.]{7,15}|localhost)(?::([0-9]{1,5}))?");

    private final int port;
    private final Optional<String> token;

    /** @param token what a request must bring; empty on loopback */
    Guard(int port, Optional<String> token) {
        this.port = port;
        this.token = token;
    }

    /** Refuses what does not come from our own page, or from a person's address bar. */
    void check(String method, URI address, Headers headers) throws RefusedException {
        if (address.toString().length() > LONGEST_ADDRESS) {
            throw new RefusedException(414, "The address is longer than " + LONGEST_ADDRESS + " characters.");
        }
        String host = one(headers, "Host").orElse("");
        if (!isOurs(host)) {
            throw new RefusedException(
                    403, "This server answers to addresses like 127.0.0.1:" + port + " only, not to other names.");
        }
        checkOrigin(method, host, headers);
        checkToken(headers);
    }

    private boolean isOurs(String host) {
        Matcher parts = HOST.matcher(host.toLowerCase(Locale.ROOT));
        if (!parts.matches()) {
            return false;
        }
        String name = parts.group(1);
        boolean isPort = String.valueOf(port).equals(parts.group(2) == null ? "80" : parts.group(2));
        boolean isLoopback = List.of("localhost", "127.0.0.1", "[::1]").contains(name);
        // figures cannot be pointed elsewhere by a name server; on loopback only its own are expected
        return isPort && (isLoopback || token.isPresent());
    }

    private static void checkOrigin(String method, String host, Headers headers) throws RefusedException {
        Optional<String> origin = one(headers, "Origin");
        if (origin.isPresent() && !origin.get().equals("http://" + host)) {
            throw new RefusedException(403, "Requests of other pages are refused.");
        }
        Optional<String> site = one(headers, "Sec-Fetch-Site");
        if (site.isPresent() && !site.get().equals("same-origin") && !site.get().equals("none")) {
            throw new RefusedException(403, "Requests from other sites are refused.");
        }
        if (method.equals("POST")) {
            String type = one(headers, "Content-Type").orElse("").toLowerCase(Locale.ROOT);
            if (!type.matches("application/json( *; *charset=\"?utf-8\"?)?")) {
                throw new RefusedException(415, "Send JSON with Content-Type: application/json.");
            }
            if (origin.isEmpty()) {
                throw new RefusedException(403, "A request that writes must name its origin.");
            }
        }
    }

    private void checkToken(Headers headers) throws RefusedException {
        if (token.isPresent() && !isToken(cookie(headers))) {
            throw new RefusedException(
                    401, "Open the address with the token that tautlog view printed when it started.");
        }
    }

    /** Whether {@code given} is the token; takes as long for a near miss as for a far one. */
    boolean isToken(String given) {
        return token.isPresent()
                && MessageDigest.isEqual(
                        given.getBytes(StandardCharsets.UTF_8), token.get().getBytes(StandardCharsets.UTF_8));
    }

    boolean needsToken() {
        return token.isPresent();
    }

    /** Names of cookies are shared by all ports of a computer. */
    String cookieName() {
        return "tautlog-" + port;
    }

    private String cookie(Headers headers) {
        for (String line : headers.getOrDefault("Cookie", List.of())) {
            for (String pair : line.split(";", -1)) {
                String trimmed = pair.trim();
                if (trimmed.startsWith(cookieName() + "=")) {
                    return trimmed.substring(cookieName().length() + 1);
                }
            }
        }
        return "";
    }

    /** A header that must not come twice. */
    private static Optional<String> one(Headers headers, String name) throws RefusedException {
        List<String> values = headers.getOrDefault(name, List.of());
        if (values.size() > 1) {
            throw new RefusedException(400, "The header " + name + " came " + values.size() + " times.");
        }
        return values.stream().findFirst();
    }
}
