package tautlog.desk.web;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** The files of the page: a fixed list, read at the start. */
final class PageFiles {
    private static final String SCRIPT = "text/javascript; charset=utf-8";
    private static final Map<String, String> TYPES = Map.ofEntries(
            Map.entry("index.html", "text/html; charset=utf-8"),
            Map.entry("view.css", "text/css; charset=utf-8"),
            Map.entry("icon.svg", "image/svg+xml"),
            Map.entry("app.js", SCRIPT),
            Map.entry("api.js", SCRIPT),
            Map.entry("words.js", SCRIPT),
            Map.entry("season.js", SCRIPT),
            Map.entry("day.js", SCRIPT),
            Map.entry("document.js", SCRIPT),
            Map.entry("plan.js", SCRIPT),
            Map.entry("found.js", SCRIPT),
            Map.entry("trace.js", SCRIPT),
            Map.entry("plot.js", SCRIPT),
            Map.entry("notes.js", SCRIPT));

    private final Map<String, Answer> byPath = new TreeMap<>();

    PageFiles() {
        TYPES.forEach((name, type) -> byPath.put("/" + name, new Answer(200, type, read(name), Map.of())));
        byPath.put("/", byPath.getOrDefault("/index.html", Answer.text(404, "")));
    }

    private static byte[] read(String name) {
        try (InputStream in = PageFiles.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException(name + " is missing from the program's jar");
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    Optional<Answer> at(String path) {
        return Optional.ofNullable(byPath.get(path));
    }
}
