package tautlog.desk.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.season.KnownSeason;

/** What the server refuses, and that it says why; raw requests over a socket, so that nothing mends them on the way. */
class WebServerTest {
    private static final String NOTE = "{\"winch\":\"" + KnownSeason.winchId("upper-landing")
            + "\",\"at_us\":1777878015000000,\"about\":\"shock\",\"text\":\"%s\"}";

    @TempDir
    Path temporary;

    private Path folder;
    private RunningView view;

    @BeforeEach
    void opens() throws Exception {
        folder = Files.createDirectory(temporary.resolve("season"));
        SampleDay.write(folder);
        Files.writeString(folder.resolve("secret.txt"), "secret");
        view = RunningView.of(folder).done();
    }

    @AfterEach
    void closes() {
        view.close();
        assertEquals(List.of(), view.bugs);
    }

    private RawAnswer ask(String start, String... headers) throws IOException {
        return RawAnswer.to(view.port(), start + " HTTP/1.1", "", host(headers));
    }

    private String[] host(String... headers) {
        String[] all = new String[headers.length + 1];
        all[0] = "Host: 127.0.0.1:" + view.port();
        System.arraycopy(headers, 0, all, 1, headers.length);
        return all;
    }

    private RawAnswer post(String body, String... headers) throws IOException {
        return RawAnswer.to(view.port(), "POST /api/notes HTTP/1.1", body, host(headers));
    }

    private String origin() {
        return "Origin: http://127.0.0.1:" + view.port();
    }

    @Test
    void servesThePageWithAPolicyThatAllowsNothingElse() throws IOException {
        RawAnswer page = ask("GET /");

        assertEquals(200, page.status());
        assertTrue(page.head().contains("content-security-policy: default-src 'none'; script-src 'self'"), page.head());
        assertTrue(page.head().contains("x-content-type-options: nosniff"));
        assertFalse(page.body().contains("<script>"), "no script in the page itself");
        RawAnswer head = ask("HEAD /");
        assertEquals(200, head.status());
        assertEquals("", head.body());
    }

    @Test
    void knowsNoPathOfTheDisk() throws IOException {
        for (String path : List.of(
                "/../secret.txt",
                "/%2e%2e/secret.txt",
                "/..%2fsecret.txt",
                "//secret.txt",
                "/secret.txt",
                "/./index.html",
                "/index.html/",
                "/api/../index.html",
                "/api/day/..",
                "/package-info.class",
                "/app.js%00",
                "/etc/passwd",
                folder.resolve("secret.txt").toString())) {
            RawAnswer answer = ask("GET " + path);
            assertEquals(404, answer.status(), path);
            assertFalse(answer.body().contains("secret\n"), path);
        }
        for (String query : List.of("day=../../etc/passwd", "day=" + folder, "day=")) {
            assertTrue(ask("GET /api/day?" + query).status() >= 400, query);
        }
    }

    private static String firstDay(String season) {
        return JsonParser.parseString(season)
                .getAsJsonObject()
                .getAsJsonArray("days")
                .get(0)
                .getAsJsonObject()
                .get("day")
                .getAsString();
    }

    @Test
    void tellsNoFolderToThePage() throws Exception {
        String season = ask("GET /api/season").body();
        String day = firstDay(season);
        String report = ask("GET /api/day?day=" + day).body();

        assertTrue(report.contains("\"file\":\"upper-landing_2026-05-04.tautlog\""), report);
        assertFalse((season + report).contains(temporary.toString()));
    }

    /** The page asks for the season anew when the stamp is another, so it showed a day worked out later only by accident. */
    @Test
    void theStampIsAnotherOnceADayWasWorkedOut() throws Exception {
        String day = firstDay(ask("GET /api/season").body());
        String before = stamp();
        String asked = "GET /api/day?day=" + day + "&hookup=round-the-corner";
        for (int i = 0; i < 600 && ask(asked).body().contains("\"known\":false"); i++) {
            Thread.sleep(50);
        }

        assertTrue(ask(asked).body().contains("\"known\":true"));
        assertFalse(before.equals(stamp()));
    }

    private String stamp() throws IOException {
        return JsonParser.parseString(ask("GET /api/live").body())
                .getAsJsonObject()
                .get("stamp")
                .getAsString();
    }

    @Test
    void refusesAHookupThatNoRigHas() throws IOException {
        for (String path : List.of("/api/season?", "/api/day?day=x&", "/api/rigs?")) {
            RawAnswer answer = ask("GET " + path + "hookup=nope");
            assertEquals(404, answer.status(), path);
            assertEquals(
                    "No rig of the folder has a hookup that is called so.",
                    answer.body().strip(),
                    path);
        }
        assertEquals(200, ask("GET /api/season?hookup=round-the-corner").status());
    }

    @Test
    void refusesOtherNamesThanItsOwn() throws IOException {
        for (String host : List.of(
                "evil.example",
                "evil.example:" + view.port(),
                "localhost.evil.example:" + view.port(),
                "10.0.0.1:" + view.port(),
                "127.0.0.1",
                "127.0.0.1:1",
                "",
                "127.0.0.1:" + view.port() + "@evil.example")) {
            assertEquals(
                    403,
                    RawAnswer.to(view.port(), "GET / HTTP/1.1", "", "Host: " + host)
                            .status(),
                    host);
        }
        assertTrue(RawAnswer.to(view.port(), "GET / HTTP/1.1", "").status() >= 400, "no host");
        assertEquals(
                200,
                RawAnswer.to(view.port(), "GET / HTTP/1.1", "", "Host: localhost:" + view.port())
                        .status());
    }

    @Test
    void refusesOtherOriginsAndSites() throws IOException {
        assertEquals(403, ask("GET /api/season", "Origin: http://evil.example").status());
        assertEquals(403, ask("GET /api/season", "Origin: null").status());
        assertEquals(403, ask("GET /api/season", "Sec-Fetch-Site: cross-site").status());
        assertEquals(403, ask("GET /api/season", "Sec-Fetch-Site: same-site").status());
        assertEquals(
                200,
                ask("GET /api/season", "Sec-Fetch-Site: same-origin", origin()).status());
    }

    @Test
    void crossSiteRequestsCannotWrite() throws IOException {
        String note = NOTE.formatted("x");
        assertEquals(
                403,
                post(note, "Content-Type: application/json", "Origin: http://evil.example")
                        .status());
        assertEquals(403, post(note, "Content-Type: application/json").status(), "without an origin");
        assertEquals(
                403,
                post(note, "Content-Type: application/json", origin(), "Sec-Fetch-Site: cross-site")
                        .status());
        assertEquals(415, post(note, "Content-Type: text/plain", origin()).status());
        assertEquals(
                415,
                post(note, "Content-Type: application/x-www-form-urlencoded", origin())
                        .status());
        assertEquals(405, ask("PUT /api/notes", origin()).status());
        assertEquals(405, ask("DELETE /api/notes", origin()).status());
        assertEquals(
                405,
                ask("POST /api/season", "Content-Type: application/json", origin(), "Content-Length: 0")
                        .status());
        assertEquals(
                405,
                ask("POST /", "Content-Type: application/json", origin(), "Content-Length: 0")
                        .status());
        assertFalse(Files.exists(folder.resolve("notes.jsonl")));
        assertEquals(200, post(note, "Content-Type: application/json", origin()).status());
        assertTrue(Files.exists(folder.resolve("notes.jsonl")));
    }

    @Test
    void refusesWhatIsMalformedOrTooLarge() throws IOException {
        for (String body : List.of(
                "",
                "{",
                "[]",
                "\"x\"",
                "null",
                "{}",
                NOTE.formatted(""),
                NOTE.formatted(" "),
                NOTE.formatted("a").replace("1777878015000000", "\"soon\""),
                NOTE.formatted("a").replace("1777878015000000", "1e400"),
                "[".repeat(5_000),
                NOTE.formatted("a".repeat(2_001)))) {
            assertEquals(
                    400, post(body, "Content-Type: application/json", origin()).status(), body);
        }
        assertEquals(
                413,
                post(NOTE.formatted("a".repeat(20_000)), "Content-Type: application/json", origin())
                        .status());
        assertEquals(414, ask("GET /?" + "a".repeat(3_000)).status());
        for (String query : List.of(
                "winch=x",
                "from=1",
                "from=a&to=2",
                "columns=0",
                "hookup=%zz",
                "nonsense=1",
                "winch=a&winch=b",
                "rig=given",
                "rig=yes")) {
            int status = ask("GET /api/trace?" + query).status();
            assertTrue(status == 400 || status == 404, query + ": " + status);
        }
        assertTrue(ask("GET /", "X: " + "a".repeat(40_000)).isRefused(), "40 kB of headers");
        assertTrue(RawAnswer.to(view.port(), "G\u0000T / HTTP/1.1", "", host()).isRefused());
        assertTrue(RawAnswer.to(view.port(), "nonsense", "", host()).isRefused());
        assertFalse(Files.exists(folder.resolve("notes.jsonl")));
        assertEquals(200, ask("GET /").status(), "still answers");
    }

    @Test
    void plansOnlyWithARigOfTheFolderAndSaysEveryFlaw() throws Exception {
        JsonObject choices =
                JsonParser.parseString(ask("GET /api/plan/choices").body()).getAsJsonObject();
        String rig = choices.getAsJsonArray("rigs")
                .get(0)
                .getAsJsonObject()
                .get("id")
                .getAsString();

        assertEquals(400, ask("GET /api/plan?log=x").status(), "no rig");
        assertEquals(404, ask("GET /api/plan?rig=other").status(), "none was given at the start");
        assertEquals(404, ask("GET /api/plan?rig=../rig.toml").status());
        assertEquals(400, ask("GET /api/plan?rig=" + rig + "&units=stone").status());
        assertEquals(
                405,
                ask("POST /api/plan", "Content-Type: application/json", origin(), "Content-Length: 0")
                        .status());
        RawAnswer flaws = ask("GET /api/plan?rig=" + rig + "&slope=%3Cscript%3E");
        assertEquals(200, flaws.status());
        assertEquals(
                2,
                JsonParser.parseString(flaws.body())
                        .getAsJsonObject()
                        .getAsJsonArray("flaws")
                        .size(),
                "log and slope");
        assertFalse(flaws.body().contains("<script"), flaws.body());
    }

    @Test
    void slowClientsDoNotKeepOthersWaiting() throws Exception {
        try (SlowClients slow = SlowClients.of(view.port(), 40)) {
            assertEquals(200, ask("GET /api/live").status());
            assertTrue(slow.size() == 40);
        }
    }

    @Test
    void elsewhereOnlyTheTokenOpens() throws Exception {
        String token = "0123456789abcdef";
        try (RunningView bound = RunningView.withToken(folder, token)) {
            String host = "Host: 127.0.0.1:" + bound.port();
            assertEquals(
                    401, RawAnswer.to(bound.port(), "GET / HTTP/1.1", "", host).status());
            assertEquals(
                    401,
                    RawAnswer.to(bound.port(), "GET /?token=wrong HTTP/1.1", "", host)
                            .status());
            assertEquals(
                    401,
                    RawAnswer.to(bound.port(), "GET /api/season?token=" + token + " HTTP/1.1", "", host)
                            .status());
            RawAnswer first = RawAnswer.to(bound.port(), "GET /?token=" + token + " HTTP/1.1", "", host);
            assertEquals(303, first.status());
            assertTrue(first.head().contains("httponly; samesite=strict"), first.head());
            String cookie = "Cookie: other=1; tautlog-" + bound.port() + "=";
            assertEquals(
                    200,
                    RawAnswer.to(bound.port(), "GET / HTTP/1.1", "", host, cookie + token)
                            .status());
            assertEquals(
                    401,
                    RawAnswer.to(bound.port(), "GET / HTTP/1.1", "", host, cookie + "0")
                            .status());
            assertEquals(
                    403,
                    RawAnswer.to(bound.port(), "GET / HTTP/1.1", "", "Host: evil.example", cookie + token)
                            .status());
        }
    }

    @Test
    void hostileTextsLeaveAsJsonStringsAndComeBackWhole() throws Exception {
        String hostile = "</script><script>alert(1)</script>\u001b[31m ../../x \u202e \" \\ 'x'";
        JsonObject note = JsonParser.parseString(NOTE.formatted("x")).getAsJsonObject();
        note.addProperty("text", hostile);
        HttpResponse<String> sent = HttpClient.newHttpClient()
                .send(
                        HttpRequest.newBuilder(URI.create(view.address() + "/api/notes"))
                                .header("Content-Type", "application/json")
                                .header("Origin", view.address())
                                .POST(HttpRequest.BodyPublishers.ofString(note.toString()))
                                .build(),
                        HttpResponse.BodyHandlers.ofString());

        assertEquals(200, sent.statusCode(), sent.body());
        assertFalse(sent.body().contains("<script"), "as \\u003c");
        assertEquals(
                hostile,
                JsonParser.parseString(sent.body())
                        .getAsJsonObject()
                        .getAsJsonArray("notes")
                        .get(0)
                        .getAsJsonObject()
                        .get("text")
                        .getAsString());
    }
}
