package tautlog.desk.use;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.config.ConfigException;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.fixtures.ShortDay;
import tautlog.desk.progress.Kept;
import tautlog.recording.RecordingException;
import tautlog.recording.RecordingWriter;
import tautlog.recording.Thinner;
import tautlog.rig.Rig;

/** What is remembered changes how long a command takes, and nothing else. */
class UseCacheTest {
    private static final FileTime LONG_AGO = FileTime.from(Instant.parse("2026-05-05T00:00:00Z"));

    /** A rig whose one strap carries next to nothing. */
    private static final String WEAK_RIG = """
            schema = 1
            [winch]
            name = "any"
            rated_pull = "40 kN"
            [[gear]]
            id = "line"
            kind = "web"
            wll = "2 kN"
            [[hookup]]
            id = "straight"
            default = true
            items = [ { gear = "line" } ]
            """;

    @TempDir
    Path folder;

    private Path recordings;
    private Path cache;

    @BeforeEach
    void makeFolders() throws IOException {
        recordings = Files.createDirectory(folder.resolve("recordings"));
        cache = folder.resolve("cache");
    }

    private String hours() {
        return hours(0);
    }

    private String hours(int code) {
        Desk run = Desk.remembering("hours", recordings, "--json", "--zone", "UTC", "--cache", cache);
        assertEquals(code, run.code(), run.err());
        return run.out();
    }

    private String forgetting() {
        return Desk.run("hours", recordings, "--json", "--zone", "UTC").out();
    }

    private Path day() throws IOException {
        Path file = SampleDay.write(recordings);
        Files.setLastModifiedTime(file, LONG_AGO);
        return file;
    }

    private Path cacheFile() {
        return cache.resolve(CacheFile.NAME);
    }

    @Test
    void secondRunOpensNoRecordingAndSaysTheSameByteForByte() throws IOException {
        Path file = day();

        String first = hours();
        Unseen.spoil(file);

        assertEquals(first, hours());
        assertEquals(3, Desk.run("hours", recordings).code(), "without what is remembered the file cannot be read");
    }

    @Test
    void readsAFileAgainThatWasWrittenSoLatelyThatAChangeMightNotShow() throws IOException {
        Path file = SampleDay.write(recordings);
        Files.setLastModifiedTime(file, FileTime.from(Instant.now().plusSeconds(3_600)));

        hours();
        Unseen.spoil(file);

        hours(3);
    }

    @Test
    void maybeDeletedAtAnyTime() throws IOException {
        day();
        String first = hours();

        Files.delete(cacheFile());

        assertEquals(first, hours());
        assertTrue(Files.exists(cacheFile()));
    }

    @Test
    void passesOverLinesThatAreTornWhereverOrForeign() throws IOException {
        Path file = day();
        String first = hours();
        byte[] whole = Files.readAllBytes(cacheFile());
        Path otherFile = cache.resolve("other");
        Files.copy(file, otherFile);

        for (int length = 0; length < whole.length; length += 307) {
            byte[] torn = java.util.Arrays.copyOf(whole, length);
            Files.write(cacheFile(), torn);
            assertEquals(first, hours(), "torn after " + length);
            assertEquals(first, hours(), "mended after it was torn at " + length);
        }
        Files.writeString(cacheFile(), "# not ours\n{\"schema\":1}\n[\"00000000\",\"\",{}]\n\u0000\n");
        assertEquals(first, hours());
        byte[] bent = whole.clone();
        bent[whole.length / 2] ^= 1;
        Files.write(cacheFile(), bent);
        assertEquals(first, hours());
    }

    @Test
    void readsOnWhenARecordingGrew() throws IOException {
        Path file = recordings.resolve("upper.tautlog");
        append(file, 1);
        String before = hours();

        append(file, 2);
        String after = hours();

        assertNotEquals(before, after);
        assertEquals(forgetting(), after);
        assertTrue(after.contains("upper.tautlog #2"), after);
    }

    private static void append(Path file, int outing) throws IOException {
        try (RecordingWriter recording = RecordingWriter.open(file, "upper")) {
            ShortDay.append(recording, outing, outing * 3_600L, SampleDay.rigToml(), day -> day.hold(5, 3_000));
        }
        Files.setLastModifiedTime(file, FileTime.from(LONG_AGO.toInstant().plusSeconds(outing)));
    }

    @Test
    void seesThatARecordingWasThinned() throws IOException {
        Path file = SampleDay.writeCalm(recordings);
        String whole = hours();

        assertEquals(
                1,
                Thinner.thin(file, Long.MAX_VALUE, Long.MAX_VALUE, OptionalLong.of(1_778_000_000_000_000L))
                        .outings());
        Files.setLastModifiedTime(file, LONG_AGO);
        String thinned = hours();

        assertNotEquals(whole, thinned);
        assertEquals(forgetting(), thinned);
    }

    @Test
    void seesThatABlockWasDamagedSinceWhateverTheFileIsCalled() throws IOException {
        Path file = day();
        hours();
        try (RandomAccessFile bytes = new RandomAccessFile(file.toFile(), "rw")) {
            bytes.seek(bytes.length() / 2);
            int there = bytes.read();
            bytes.seek(bytes.length() / 2);
            bytes.write(there ^ 0x10);
        }
        Files.move(file, file.resolveSibling("renamed.tautlog"));

        Desk run = Desk.remembering("hours", recordings, "--json", "--zone", "UTC", "--cache", cache);

        assertEquals(forgetting(), run.out());
        assertEquals(3, run.code(), run.err());
    }

    @Test
    void knowsARecordingUnderAnotherNameAndCopiedTwiceOnce() throws IOException {
        Path file = day();
        String alone = hours();
        Path other = Files.createDirectory(folder.resolve("copies")).resolve(file.getFileName());
        Files.copy(file, other);

        Desk both = Desk.remembering("hours", recordings, other, other, "--json", "--zone", "UTC", "--cache", cache);

        assertEquals(alone, both.out());
    }

    @Test
    void doesNotMistakeWhatAnotherRigFound() throws IOException, ConfigException {
        Path file = day();
        UseSettings ofTheDay = UseAgainstSlowTest.settings(1);
        UseSettings stored = withCache(ofTheDay, Optional.empty());
        UseSettings other =
                withCache(ofTheDay, Optional.of(new UseSettings.OtherRig(Rig.parse("rig.toml", WEAK_RIG), WEAK_RIG)));

        List<OutingUse> first = UseHistory.of(List.of(file), stored).outings();
        List<OutingUse> second = UseHistory.of(List.of(file), other).outings();
        List<OutingUse> again = UseHistory.of(List.of(file), stored).outings();

        assertEquals(first, again);
        assertNotEquals(
                first.get(0).meters().count("overload"), second.get(0).meters().count("overload"));
        assertEquals(second, UseHistory.of(List.of(file), other).outings());
    }

    private UseSettings withCache(UseSettings settings, Optional<UseSettings.OtherRig> rig) {
        return new UseSettings(Optional.of(cache), settings.program(), rig, 1, settings.progress(), settings.now());
    }

    @Test
    void anotherVersionOfTheProgramReadsAnew() throws IOException {
        Path file = day();
        UseSettings one = withCache(UseAgainstSlowTest.settings(1), Optional.empty());
        UseHistory.of(List.of(file), one);
        Unseen.spoil(file);
        UseSettings other = new UseSettings(one.cacheFolder(), "tautlog 9", one.rig(), 1, one.progress(), one.now());

        assertEquals(1, UseHistory.of(List.of(file), one).outings().size());
        org.junit.jupiter.api.Assertions.assertThrows(
                RecordingException.class, () -> UseHistory.of(List.of(file), other));
    }

    @Test
    void homeThatCannotBeWrittenMeansNothingIsRemembered() throws IOException {
        day();
        Path noFolder = Files.writeString(folder.resolve("file"), "");

        Desk run =
                Desk.remembering("hours", recordings, "--json", "--zone", "UTC", "--cache", noFolder.resolve("cache"));

        assertEquals(forgetting(), run.out());
        assertEquals(0, run.code(), run.err());
        Files.createDirectory(
                cache, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("r-xr-xr-x")));
        assertEquals(forgetting(), hours());
    }

    @Test
    void neverGrowsForEverAndKeepsTheYoungest() throws IOException {
        long most = 4_000;
        for (int i = 0; i < 200; i++) {
            CacheFile file = CacheFile.read(cache, most);
            file.put(CacheFile.key("number " + i), "value " + i);
            file.put(CacheFile.key("again"), i);
            file.append();
            assertTrue(Files.size(cacheFile()) <= most, "after " + i);
        }
        CacheFile left = CacheFile.read(cache, most);
        assertEquals(Optional.of("value 199"), left.value(CacheFile.key("number 199"), String.class));
        assertEquals(Optional.of(199), left.value(CacheFile.key("again"), Integer.class));
        assertFalse(left.value(CacheFile.key("number 0"), String.class).isPresent());
        try (var files = Files.list(cache)) {
            assertEquals(1, files.count());
        }
    }

    @Test
    void tellsWhetherAllIsKept() throws IOException {
        assertEquals(Kept.NOTHING, CacheFile.none().close());
        CacheFile file = CacheFile.read(cache);
        file.put(CacheFile.key("one"), 1);

        assertEquals(Kept.READ_SO_FAR, file.close());
        assertEquals(Optional.of(1), CacheFile.read(cache).value(CacheFile.key("one"), Integer.class));
    }

    @Test
    void tellsThatNotAllIsKeptWhenTheDiskWasFullOnce() throws IOException {
        CacheFile file = CacheFile.read(cache);
        Path full = Path.of("/dev/full");
        assumeTrue(Files.exists(full), "skipped: there is no " + full);
        Files.createSymbolicLink(cacheFile(), full);
        file.put(CacheFile.key("one"), 1);
        file.append();
        Files.delete(cacheFile());
        file.put(CacheFile.key("two"), 2);

        assertEquals(Kept.NOT_ALL, file.close());
        CacheFile kept = CacheFile.read(cache);
        assertFalse(kept.has(CacheFile.key("one")));
        assertTrue(kept.has(CacheFile.key("two")));
    }

    /** In a folder whose path is so long that a longer name than the cache's finds no place (Linux: PATH_MAX, 4,096 with a zero). */
    @Test
    void whatCannotBeShortenedIsKeptAll() throws IOException {
        Path deep = cache;
        int longest = 4_095 - 1 - CacheFile.NAME.length() - 2;
        while (deep.toString().length() < longest - 1) {
            deep = deep.resolve(
                    "x".repeat(Math.min(200, longest - 1 - deep.toString().length())));
        }
        long most = 10;
        CacheFile file = CacheFile.read(deep, most);
        file.put(CacheFile.key("one"), 1);
        file.append();
        file.put(CacheFile.key("two"), 2);

        assertEquals(Kept.READ_SO_FAR, file.close());
        assertTrue(Files.size(deep.resolve(CacheFile.NAME)) > most, "it could be shortened");
        CacheFile kept = CacheFile.read(deep, most);
        assertTrue(kept.has(CacheFile.key("one")));
        assertTrue(kept.has(CacheFile.key("two")));
    }

    @Test
    void severalProcessesAtOnceLoseNothingThatMatters() throws Exception {
        day();
        String alone = forgetting();
        List<Thread> others = new ArrayList<>();
        List<String> said = java.util.Collections.synchronizedList(new ArrayList<>());
        for (int i = 0; i < 4; i++) {
            Thread other = new Thread(() -> said.add(hours()));
            others.add(other);
            other.start();
        }
        for (Thread other : others) {
            other.join();
        }

        assertEquals(List.of(alone, alone, alone, alone), said);
        assertEquals(alone, hours());
        for (String line :
                Files.readString(cacheFile(), StandardCharsets.UTF_8).lines().toList()) {
            assertTrue(line.isEmpty() || line.endsWith("}]"), line);
        }
    }
}
