package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tautlog.detect.Second;
import tautlog.fixtures.EvidenceLog;

/** Every format version ever released stays readable: the files of {@code samples/recordings}, which are never written anew. */
class FormatVersionsTest {
    /** Both by a reader of some ninety lines, in another language, that was written from RECORDING.md alone. */
    private static final long GREATEST = 8_042;

    private static final long SUM = 74_666_813;
    private static final String LAST_LINK = "378f211cd526dd4a86f1a1129058c8127d241c259f919d78ec84b4fcb158ce39";

    /** The low byte of it (sqlite.org/fileformat2.html, 1.3). */
    private static final int USER_VERSION_AT = 63;

    @TempDir
    Path folder;

    @BeforeEach
    void copy() throws IOException {
        Path shipped = Path.of(System.getProperty("tautlog.root"), "samples", "recordings");
        try (Stream<Path> files = Files.list(shipped)) {
            for (Path file : files.toList()) {
                Files.copy(file, folder.resolve(String.valueOf(file.getFileName())));
            }
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"version-1.tautlog", "version-2.tautlog", "version-3.tautlog", "version-4.tautlog"})
    void isReadToTheLastLink(String name) throws IOException {
        try (Recording recording = Recording.open(folder.resolve(name))) {
            Verification found = recording.verify();
            assertTrue(found.isIntact(), found.damages().toString());
            assertEquals(LAST_LINK, found.lastLink());
            assertEquals("hillside", found.winch());
            assertEquals("0123456789abcdef", recording.id());
            assertEquals(2, found.outings().size());
            assertEquals(23_518, found.samples());
            assertEquals(60, found.gaps().get(0).missing());
            assertTrue(found.outings().get(0).ended() && !found.outings().get(1).closed());
        }
    }

    /** Counts were made at 40 and at 7,000 to 7,900, with noise of ±8, after a snap to 8,040. */
    @ParameterizedTest
    @ValueSource(strings = {"version-1.tautlog", "version-2.tautlog", "version-3.tautlog", "version-4.tautlog"})
    void tellsItsCountsAndWhatWasSaid(String name) throws IOException {
        try (Recording recording = Recording.open(folder.resolve(name))) {
            Outing outing = recording.outings().get(0);
            RunLog log = new RunLog();
            assertEquals(List.of(), recording.replay(outing, log));
            long[] counts = log.samples.stream()
                    .mapToLong(line -> Long.parseLong(line.substring(line.lastIndexOf(' ') + 1)))
                    .toArray();
            assertEquals(20_000, counts.length);
            assertEquals(32, java.util.Arrays.stream(counts).min().orElseThrow());
            assertEquals(GREATEST, java.util.Arrays.stream(counts).max().orElseThrow());
            assertEquals(SUM, java.util.Arrays.stream(counts).sum());
            assertTrue(
                    log.log.lines().contains("mark 20060 Förster ½ ⚠"),
                    log.log.lines().toString());
            List<Second> seconds = recording.seconds(outing);
            assertEquals(40, seconds.size());
            assertEquals(540 + 39 / 7.0, seconds.get(39).shaftRpm().orElseThrow());
            assertEquals(1, recording.findings(outing).size());
        }
    }

    @Test
    void allTellTheSame() throws IOException {
        assertEquals(told("version-1.tautlog"), told("version-2.tautlog"));
        assertEquals(told("version-1.tautlog"), told("version-3.tautlog"));
        assertEquals(told("version-1.tautlog"), told("version-4.tautlog"));
    }

    /** 1: one after the other, 4: that deflated, 5: in columns. */
    @Test
    void eachHoldsItsOwnCodingOfSeconds() throws Exception {
        assertEquals(List.of(1), codingsOfSeconds("version-1.tautlog"));
        assertEquals(List.of(4), codingsOfSeconds("version-2.tautlog"));
        assertEquals(List.of(5), codingsOfSeconds("version-3.tautlog"));
        assertEquals(List.of(5), codingsOfSeconds("version-4.tautlog"));
    }

    /** 1: runs one behind the other, 3: packed, 6: in planes. */
    @Test
    void eachHoldsItsOwnCodingOfSamples() throws Exception {
        assertEquals(List.of(1, 1, 1), codingsOfSamples("version-1.tautlog"));
        assertEquals(List.of(3, 3, 3), codingsOfSamples("version-2.tautlog"));
        assertEquals(List.of(1, 1, 1), codingsOfSamples("version-3.tautlog"));
        assertEquals(List.of(6, 6, 6), codingsOfSamples("version-4.tautlog"));
    }

    private List<Integer> codingsOfSeconds(String name) throws Exception {
        return codings(name, "SELECT block FROM seconds ORDER BY outing, id");
    }

    private List<Integer> codingsOfSamples(String name) throws Exception {
        return codings(name, "SELECT block FROM evidence WHERE kind = 2 ORDER BY seq");
    }

    private List<Integer> codings(String name, String blocks) throws Exception {
        List<Integer> codings = new ArrayList<>();
        try (Connection connection = RecordingFile.openForReading(folder.resolve(name));
                ResultSet rows = connection.createStatement().executeQuery(blocks)) {
            while (rows.next()) {
                codings.add((int) rows.getBytes(1)[5]);
            }
        }
        return codings;
    }

    /** An older program must not misread what is added. */
    @ParameterizedTest
    @ValueSource(strings = {"version-1.tautlog", "version-2.tautlog", "version-3.tautlog", "version-4.tautlog"})
    void openedForWritingItIsOfTheNewestVersionAndReadItStaysAsItIs(String name) throws IOException {
        byte[] before = Files.readAllBytes(folder.resolve(name));
        List<Object> told = told(name);
        assertArrayEquals(before, Files.readAllBytes(folder.resolve(name)));

        RecordingWriter.open(folder.resolve(name), "hillside").close();

        assertEquals(4, version(name));
        assertEquals(told, told(name));
    }

    private int version(String name) throws IOException {
        return Files.readAllBytes(folder.resolve(name))[USER_VERSION_AT];
    }

    /** Columns behind rows of an older coding, which stay; deflated when packed. */
    @ParameterizedTest
    @CsvSource({
        "version-1.tautlog, 1, 4",
        "version-2.tautlog, 4, 4",
        "version-3.tautlog, 5, 5",
        "version-4.tautlog, 5, 5"
    })
    void canBeGoneOnWithAndPacked(String name, int coding, int packedCoding) throws Exception {
        List<Object> told = new ArrayList<>(told(name));
        List<Second> added = goOn(name);
        List<Object> after = told(name);
        assertEquals(told, after.subList(0, told.size()));
        assertEquals(added, after.get(after.size() - 2));
        assertEquals(List.of(coding, 5), codingsOfSeconds(name));
        assertEquals(4, version(name));
        String lastLink = lastLinkOfIntact(name);

        assertTrue(Packer.pack(folder.resolve(name)).isReplaced());
        assertEquals(after, told(name));
        assertEquals(List.of(packedCoding, 5), codingsOfSeconds(name));
        assertEquals(4, version(name));
        assertEquals(lastLink, lastLinkOfIntact(name));
    }

    /** An outing of thirty seconds is added. */
    private List<Second> goOn(String name) throws IOException {
        List<Second> seconds = new ArrayList<>();
        try (RecordingWriter writer = RecordingWriter.open(folder.resolve(name), "hillside")) {
            OutingWriter outing = writer.begin(Story.START);
            Story.plain(1, 600).tell(outing);
            for (int k = 0; k < 30; k++) {
                seconds.add(new Second(
                        k, 500 + 500L * k, -8, 8 + k, 3, 500, OptionalDouble.of(540.1), "straight", 0.01 * k, 0));
            }
            seconds.forEach(outing::second);
            outing.end();
            outing.commit();
        }
        return seconds;
    }

    private String lastLinkOfIntact(String name) throws IOException {
        try (Recording recording = Recording.open(folder.resolve(name))) {
            Verification found = recording.verify();
            assertTrue(found.isIntact(), found.damages().toString());
            assertEquals(3, found.outings().size());
            return found.lastLink();
        }
    }

    /** A file of the first version packs into what the second is, which older programs read, until it is gone on with. */
    @Test
    void theFirstPacksIntoTheSecond() throws IOException {
        List<Object> told = told("version-2.tautlog");
        assertEquals(1, version("version-1.tautlog"));
        assertTrue(Packer.pack(folder.resolve("version-1.tautlog")).isReplaced());
        assertEquals(told, told("version-1.tautlog"));
        assertEquals(2, version("version-1.tautlog"));

        goOn("version-1.tautlog");
        assertEquals(4, version("version-1.tautlog"));
        lastLinkOfIntact("version-1.tautlog");
    }

    private List<Object> told(String name) throws IOException {
        List<Object> all = new ArrayList<>();
        try (Recording recording = Recording.open(folder.resolve(name))) {
            for (Outing outing : recording.outings()) {
                EvidenceLog log = new EvidenceLog();
                assertEquals(List.of(), recording.replay(outing, log));
                all.add(outing);
                all.add(log.lines());
                all.add(recording.seconds(outing));
                all.add(recording.findings(outing));
            }
        }
        return all;
    }
}
