package tautlog.desk.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** Debian's chromium without a window, with a fresh profile for each visit and no name resolved to any address. */
final class Browser {
    static final Path PROGRAM = Path.of("/usr/bin/chromium");
    /** What its log of the network gives as initiator of the browser's own requests. */
    private static final String ITSELF = "not an origin";

    private Browser() {}

    /**
     * What a page did.
     *
     * @param requests addresses that the page asked the network for; reading its own file is none
     * @param console what was written to the console, messages of the browser about the page included
     */
    record Visit(String dom, List<String> requests, List<String> console) {
        Visit {
            requests = List.copyOf(requests);
            console = List.copyOf(console);
        }
    }

    static Visit visit(Path folder, Path page) throws IOException, InterruptedException {
        Path run = Files.createTempDirectory(folder, "visit");
        Path net = run.resolve("net.json");
        run(
                run,
                "--enable-logging=stderr",
                "--log-net-log=" + net,
                "--dump-dom",
                page.toUri().toString());
        return new Visit(
                Files.readString(run.resolve("out")),
                requests(JsonParser.parseString(Files.readString(net)).getAsJsonObject()),
                Files.readAllLines(run.resolve("err")).stream()
                        .filter(line -> line.contains(":CONSOLE"))
                        .toList());
    }

    static void picture(Path folder, Path page, String size, Path picture) throws IOException, InterruptedException {
        run(
                Files.createTempDirectory(folder, "picture"),
                "--hide-scrollbars",
                "--window-size=" + size,
                "--screenshot=" + picture.toAbsolutePath(),
                page.toUri().toString());
    }

    private static List<String> requests(JsonObject log) {
        List<String> asked = new ArrayList<>();
        for (JsonElement event : log.getAsJsonArray("events")) {
            JsonElement params = event.getAsJsonObject().get("params");
            if (params != null && params.isJsonObject()) {
                JsonObject of = params.getAsJsonObject();
                boolean isStart = of.has("url") && of.has("initiator");
                if (isStart && !of.get("initiator").getAsString().equals(ITSELF)) {
                    asked.add(of.get("url").getAsString());
                }
            }
        }
        return asked.stream().distinct().toList();
    }

    private static void run(Path folder, String... arguments) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of(
                PROGRAM.toString(),
                "--headless",
                "--no-sandbox",
                "--disable-gpu",
                "--no-first-run",
                "--disable-background-networking",
                "--disable-component-update",
                "--disable-sync",
                "--host-resolver-rules=MAP * ~NOTFOUND",
                "--user-data-dir=" + folder.resolve("profile")));
        command.addAll(List.of(arguments));
        Path errors = folder.resolve("err");
        Process browser = new ProcessBuilder(command)
                .redirectOutput(folder.resolve("out").toFile())
                .redirectError(errors.toFile())
                .start();
        try {
            assertTrue(browser.waitFor(90, TimeUnit.SECONDS), () -> "the browser hangs, see " + errors);
        } finally {
            browser.destroyForcibly();
        }
        assertEquals(0, browser.exitValue(), () -> "see " + errors);
    }
}
