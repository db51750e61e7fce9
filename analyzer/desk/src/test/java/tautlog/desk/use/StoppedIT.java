package tautlog.desk.use;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.disk.FileState;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.progress.Kept;

/**
 * The packaged program on a terminal, stopped with Ctrl-C in the middle: what it had read is kept, and the next run goes on from there. It
 * runs on one core without a compiler, slowly, so that there is a middle.
 */
class StoppedIT {
    private static final Path SCRIPT = Path.of("/usr/bin/script");
    private static final Path JAR =
            Path.of(System.getProperty("tautlog.root"), "analyzer", "desk", "target", "tautlog.jar");
    private static final Pattern SOFAR = Pattern.compile("(\\d+) of (\\d+) (files|outings)");
    private static final String CLEAR = "\r\u001B[K";
    private static final int FILES = 30;
    /** Fewer than make the cache write by itself: what is there was written when the program was stopped. */
    private static final int ENOUGH = 6;

    @TempDir
    Path folder;

    private Path recordings = Path.of("");
    private Path cache = Path.of("");

    @BeforeEach
    void writeRecordings() throws IOException {
        boolean isThere = Files.isExecutable(SCRIPT);
        if ("1".equals(System.getenv("TAUTLOG_MANDATORY"))) {
            assertTrue(isThere, SCRIPT + " is missing and TAUTLOG_MANDATORY=1");
        }
        assumeTrue(isThere, "skipped: there is no " + SCRIPT + " to make a terminal with");
        recordings = Files.createDirectory(folder.resolve("recordings"));
        cache = folder.resolve("cache");
        for (int i = 0; i < FILES; i++) {
            SampleDay.write(recordings, String.format("day-%02d.tautlog", i), 7 + i, 86_400L * i);
        }
        MixedRecordings.age(List.of(recordings));
    }

    /** The command's words, the folder among them. */
    private static List<String> java(String... words) {
        List<String> java = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xint",
                "-XX:ActiveProcessorCount=1",
                "-jar"));
        java.add(JAR.toString());
        java.addAll(List.of(words));
        return java;
    }

    private String hours(String... further) throws Exception {
        List<String> words = java("hours", recordings.toString(), "--zone", "UTC");
        words.addAll(List.of(further));
        Process program = new ProcessBuilder(words)
                .redirectError(folder.resolve("err").toFile())
                .start();
        String out;
        try (InputStream in = program.getInputStream()) {
            out = new String(in.readAllBytes(), UTF_8);
        }
        assertTrue(program.waitFor(1, TimeUnit.MINUTES));
        assertEquals(0, program.exitValue(), Files.readString(folder.resolve("err")));
        return out;
    }

    /** What a program showed on its terminal until it ended, and how it ended. */
    private record Shown(String text, int code) {}

    /** Starts it on a terminal of its own, and sends it what Ctrl-C sends once so many are done. */
    private Shown stopped(int enough, List<String> words) throws Exception {
        Path pid = folder.resolve("pid");
        String quoted =
                String.join(" ", words.stream().map(word -> "'" + word + "'").toList());
        String line = "echo $$ > '" + pid + "'; exec " + quoted;
        ProcessBuilder terminal =
                new ProcessBuilder(SCRIPT.toString(), "-qefc", line, "/dev/null").redirectErrorStream(true);
        terminal.environment().put("TERM", "xterm");
        terminal.environment().put("SHELL", "/bin/sh");
        terminal.environment().remove("NO_COLOR");
        Process program = terminal.start();
        ByteArrayOutputStream shown = new ByteArrayOutputStream();
        boolean sent = false;
        try (InputStream in = program.getInputStream()) {
            for (int one = in.read(); one >= 0; one = in.read()) {
                shown.write(one);
                if (!sent && mostDone(shown.toString(UTF_8)) >= enough) {
                    sent = true;
                    new ProcessBuilder("kill", "-INT", Files.readString(pid).strip()).start();
                }
            }
        }
        assertTrue(program.waitFor(1, TimeUnit.MINUTES));
        assertTrue(sent, () -> "never got so far: " + shown.toString(UTF_8));
        return new Shown(shown.toString(UTF_8), program.exitValue());
    }

    private static int mostDone(String shown) {
        int most = 0;
        Matcher matcher = SOFAR.matcher(shown);
        while (matcher.find()) {
            most = Math.max(most, Integer.parseInt(matcher.group(1)));
        }
        return most;
    }

    /** Files whose outing need not be read again. */
    private List<Path> remembered() throws IOException {
        UseCache known = UseCache.in(Optional.of(cache), version());
        List<Path> remembered = new ArrayList<>();
        try (var files = Files.list(recordings)) {
            for (Path file : files.sorted().toList()) {
                Optional<FileHead> head = known.head(file, FileState.of(file));
                if (head.isPresent() && isUseKnown(known, file, head.get())) {
                    remembered.add(file);
                }
            }
        }
        return remembered;
    }

    private static boolean isUseKnown(UseCache known, Path file, FileHead head) {
        OutingHead outing = head.outings().get(0);
        return known.use(
                        new UseCache.Asked(head.recordingId(), outing.identity().index(), Optional.empty(), ""))
                .flatMap(kept -> kept.of(outing.fingerprint(), file))
                .isPresent();
    }

    private String version() throws IOException {
        Process program = new ProcessBuilder(java("--version")).start();
        try (InputStream in = program.getInputStream()) {
            return new String(in.readAllBytes(), UTF_8).strip();
        }
    }

    /** Who opens it notices; from outside it looks as before. */
    private static void spoilUnseen(Path file) throws IOException {
        FileTime written = Files.getLastModifiedTime(file);
        Files.write(file, new byte[(int) Files.size(file)]);
        Files.setLastModifiedTime(file, written);
    }

    @Test
    void nextRunReadsOnlyWhatIsMissingAndSaysTheSame() throws Exception {
        String whole = hours("--no-cache");

        Shown shown =
                stopped(ENOUGH, java("hours", recordings.toString(), "--zone", "UTC", "--cache", cache.toString()));

        assertEquals(130, shown.code(), shown.text());
        assertTrue(shown.text().endsWith(CLEAR + Kept.READ_SO_FAR.sentence() + "\r\n"), shown.text());
        List<Path> remembered = remembered();
        assertTrue(remembered.size() >= mostDone(shown.text()), remembered + " of " + shown.text());
        assertTrue(remembered.size() < FILES, "it was stopped in the middle");
        for (String line : Files.readAllLines(cache.resolve(CacheFile.NAME))) {
            assertTrue(line.isEmpty() || line.endsWith("}]"), "torn: " + line);
        }
        for (Path file : remembered) {
            spoilUnseen(file);
        }
        assertEquals(whole, hours("--cache", cache.toString()));
    }

    @Test
    void withoutACacheItSaysThatNothingWasChanged() throws Exception {
        Shown shown = stopped(1, java("hours", recordings.toString(), "--no-cache"));

        assertEquals(130, shown.code(), shown.text());
        assertTrue(shown.text().endsWith(CLEAR + Kept.NOTHING.sentence() + "\r\n"), shown.text());
    }

    @Test
    void reportTellsHowFarItIsAndLeavesTheLineClean() throws Exception {
        Shown shown = stopped(1, java("report", recordings.toString()));

        assertEquals(130, shown.code(), shown.text());
        assertTrue(shown.text().endsWith(CLEAR + Kept.NOTHING.sentence() + "\r\n"), shown.text());
    }
}
