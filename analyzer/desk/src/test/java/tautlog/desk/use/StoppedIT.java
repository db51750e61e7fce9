package tautlog.desk.use;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayOutputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.disk.FileState;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.fixtures.ShortDay;
import tautlog.desk.progress.Kept;
import tautlog.recording.Packer;
import tautlog.recording.RecordingWriter;

/**
 * The packaged program on a terminal, stopped with Ctrl-C in the middle: what it had read is kept, and the next run goes on from there. The
 * middle lasts as long as the test wants where the last recording is a pipe that nobody writes to. It runs on one core without a compiler,
 * slowly, so that it tells how far it is.
 */
@Timeout(value = 5, unit = TimeUnit.MINUTES, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class StoppedIT {
    private static final Path SCRIPT = Path.of("/usr/bin/script");
    private static final Path JAR =
            Path.of(System.getProperty("tautlog.root"), "analyzer", "desk", "target", "tautlog.jar");
    private static final Pattern SOFAR = Pattern.compile("(\\d+) of (\\d+) (files|outings)");
    private static final String CLEAR = "\r\u001B[K";
    /** So few that the cache does not write by itself: what is there was written when the program was stopped. */
    private static final int FILES = 8;

    private static final String LAST = "last.tautlog";

    @TempDir
    Path folder;

    private Path recordings = Path.of("");
    private Path cache = Path.of("");
    private List<Path> first = List.of();
    private Optional<Process> terminal = Optional.empty();

    @AfterEach
    void endWhatStillRuns() {
        terminal.ifPresent(Process::destroyForcibly);
    }

    @BeforeEach
    void writeRecordings() throws IOException {
        boolean isThere = Files.isExecutable(SCRIPT);
        if ("1".equals(System.getenv("TAUTLOG_MANDATORY"))) {
            assertTrue(isThere, SCRIPT + " is missing and TAUTLOG_MANDATORY=1");
        }
        assumeTrue(isThere, "skipped: there is no " + SCRIPT + " to make a terminal with");
        recordings = Files.createDirectory(folder.resolve("recordings"));
        cache = folder.resolve("cache");
        first = new ArrayList<>();
        for (int i = 0; i < FILES; i++) {
            first.add(SampleDay.write(recordings, "day-" + i + ".tautlog", 7 + i, 86_400L * i));
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

    /** Starts it on a terminal of its own. */
    private Process started(List<String> words) throws IOException {
        String quoted =
                String.join(" ", words.stream().map(word -> "'" + word + "'").toList());
        String line = "echo $$ > '" + pid() + "'; exec " + quoted;
        ProcessBuilder builder =
                new ProcessBuilder(SCRIPT.toString(), "-qefc", line, "/dev/null").redirectErrorStream(true);
        builder.environment().put("TERM", "xterm");
        builder.environment().put("SHELL", "/bin/sh");
        builder.environment().remove("NO_COLOR");
        Process program = builder.start();
        terminal = Optional.of(program);
        return program;
    }

    private Path pid() {
        return folder.resolve("pid");
    }

    /** Sends it what Ctrl-C sends. */
    private void interrupt() throws Exception {
        Process kill =
                new ProcessBuilder("kill", "-INT", Files.readString(pid()).strip()).start();
        assertEquals(0, kill.waitFor(), "it had ended before it was stopped");
    }

    private static Shown toTheEnd(Process program, String before) throws Exception {
        String text = before + new String(program.getInputStream().readAllBytes(), UTF_8);
        return new Shown(text, program.waitFor());
    }

    /** Starts it, and stops it while it waits for what the last recording holds: nothing comes. */
    private Shown stoppedAtTheLast(List<String> words) throws Exception {
        Path last = recordings.resolve(LAST);
        assertEquals(0, new ProcessBuilder("mkfifo", last.toString()).start().waitFor());
        Process program = started(words);
        OutputStream nothing = new FileOutputStream(last.toFile()); // waits until the program reads it
        try {
            assertFalse(Files.exists(cache.resolve(CacheFile.NAME)), "written before it was stopped");
            interrupt();
            return toTheEnd(program, "");
        } finally {
            nothing.close();
            Files.delete(last);
        }
    }

    /** Starts it, and stops it as soon as it tells how far it is. */
    private Shown stoppedOnceItTells(List<String> words) throws Exception {
        Process program = started(words);
        ByteArrayOutputStream shown = new ByteArrayOutputStream();
        while (mostDone(shown.toString(UTF_8)) == 0) {
            int one = program.getInputStream().read();
            assertTrue(one >= 0, () -> "it ended before it told anything: " + shown.toString(UTF_8));
            shown.write(one);
        }
        interrupt();
        return toTheEnd(program, shown.toString(UTF_8));
    }

    /** Starts it, and stops it in the middle, which lasts some seconds or longer. */
    private Shown stoppedOnce(List<String> words, BooleanSupplier isInTheMiddle) throws Exception {
        Process program = started(words);
        while (!isInTheMiddle.getAsBoolean()) {
            assertTrue(program.isAlive(), "it ended before its middle");
            Thread.onSpinWait();
        }
        interrupt();
        return toTheEnd(program, "");
    }

    /** As Linux tells it. */
    private boolean hasLastOpen() {
        try {
            Path handles = Path.of("/proc", Files.readString(pid()).strip(), "fd");
            try (Stream<Path> open = Files.list(handles)) {
                return open.anyMatch(this::isLast);
            }
        } catch (IOException | UncheckedIOException notYet) {
            return false;
        }
    }

    private boolean isLast(Path handle) {
        try {
            return Files.readSymbolicLink(handle).equals(recordings.resolve(LAST));
        } catch (IOException closed) {
            return false;
        }
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

    @Test
    void nextRunReadsOnlyWhatIsMissingAndSaysTheSame() throws Exception {
        Path last = SampleDay.write(recordings, LAST, 100, 86_400L * FILES);
        String whole = hours("--no-cache");
        Path aside = Files.move(last, folder.resolve("aside"));

        Shown shown =
                stoppedAtTheLast(java("hours", recordings.toString(), "--zone", "UTC", "--cache", cache.toString()));

        assertEquals(130, shown.code(), shown.text());
        assertTrue(shown.text().endsWith(CLEAR + Kept.READ_SO_FAR.sentence() + "\r\n"), shown.text());
        assertEquals(first, remembered());
        for (String line : Files.readAllLines(cache.resolve(CacheFile.NAME))) {
            assertTrue(line.isEmpty() || line.endsWith("}]"), "torn: " + line);
        }
        for (Path file : first) {
            Unseen.spoil(file);
        }
        Files.move(aside, last);
        assertEquals(whole, hours("--cache", cache.toString()));
    }

    @Test
    void withoutACacheItSaysThatNothingWasChanged() throws Exception {
        Shown shown = stoppedAtTheLast(java("hours", recordings.toString(), "--no-cache"));

        assertEquals(130, shown.code(), shown.text());
        assertTrue(shown.text().endsWith(CLEAR + Kept.NOTHING.sentence() + "\r\n"), shown.text());
    }

    /** Its last outing takes it many times as long as all before, and a signal on its way. */
    @Test
    void reportTellsHowFarItIsAndLeavesTheLineClean() throws Exception {
        writeAnHour();

        Shown shown = stoppedOnceItTells(java("report", recordings.toString()));

        assertEquals(130, shown.code(), shown.text());
        assertTrue(shown.text().endsWith(CLEAR + Kept.NOTHING.sentence() + "\r\n"), shown.text());
    }

    @Test
    void verifySaysThatNothingWasChanged() throws Exception {
        writeAnHour();

        Shown shown = stoppedOnce(java("verify", recordings.toString()), this::hasLastOpen);

        assertEquals(130, shown.code(), shown.text());
        assertEquals(Kept.NOTHING.sentence() + "\r\n", shown.text());
    }

    @Test
    void packSaysThatEachRecordingIsWhole() throws Exception {
        writeAnHour();
        Path beside = recordings.resolve(LAST + "-pack");

        Shown shown = stoppedOnce(java("pack", recordings.toString()), () -> Files.exists(beside));

        assertEquals(130, shown.code(), shown.text());
        assertTrue(shown.text().endsWith(Kept.EACH_WHOLE.sentence() + "\r\n"), shown.text());
        for (Path file : first) {
            assertFalse(Packer.pack(file).isReplaced(), "packed, and verified now");
        }
        assertTrue(Packer.pack(recordings.resolve(LAST)).isReplaced(), "as it was, and packed now");
        assertFalse(Files.exists(beside));
    }

    /** What stood under the table's name stays; no half row does. */
    @Test
    void exportLeavesNoPartOfATable() throws Exception {
        writeAnHour();
        for (String kind : List.of("--csv", "--parquet")) {
            Path table = Files.writeString(folder.resolve("table"), "as it was");

            Shown shown =
                    stoppedOnce(java("export", recordings.toString(), kind, table.toString()), () -> hasPart(folder));

            assertEquals(130, shown.code(), shown.text());
            assertEquals(Kept.NOTHING.sentence() + "\r\n", shown.text());
            assertEquals("as it was", Files.readString(table));
            assertFalse(hasPart(folder), kind);
        }
    }

    private static boolean hasPart(Path folder) {
        String[] parts = folder.toFile().list((where, name) -> name.startsWith("table-") && name.endsWith("-part"));
        return parts != null && parts.length > 0;
    }

    /** Rows may follow what is said, until the program is over. */
    @Test
    void exportToTheTerminalSaysThatTheTableIsNotComplete() throws Exception {
        writeAnHour();

        Shown shown = stoppedOnce(java("export", recordings.toString(), "--csv", "-"), this::hasLastOpen);

        assertEquals(130, shown.code());
        assertTrue(shown.text().contains(Kept.PART_OF_TABLE.sentence()), "not said");
    }

    private void writeAnHour() throws IOException {
        try (RecordingWriter recording = RecordingWriter.open(recordings.resolve(LAST), "upper-landing")) {
            ShortDay.append(recording, 100, 86_400L * FILES, SampleDay.rigToml(), StoppedIT::pullAnHour);
        }
    }

    private static void pullAnHour(ShortDay day) {
        for (int pull = 0; pull < 1_800; pull++) {
            day.ramp(100, 6_000);
            day.ramp(6_000, 100);
        }
    }
}
