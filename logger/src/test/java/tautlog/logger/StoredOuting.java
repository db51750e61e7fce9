package tautlog.logger;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.stream.Stream;
import tautlog.config.ConfigException;
import tautlog.detect.Detection;
import tautlog.detect.Finding;
import tautlog.detect.FindingSink;
import tautlog.detect.Second;
import tautlog.logger.recorder.WrittenEvents;
import tautlog.recording.Outing;
import tautlog.recording.Recording;
import tautlog.rig.LineCalibration;
import tautlog.rig.Rig;
import tautlog.sample.ZeroShift;

/** One outing read back from a recording, as a reader would. */
public record StoredOuting(Outing outing, List<String> evidence, List<Finding> said, List<Second> seconds) {

    /** The one recording of the folder. */
    public static Path only(Path recordings) throws IOException {
        try (Stream<Path> files = Files.list(recordings)) {
            List<Path> found =
                    files.filter(f -> f.toString().endsWith(".tautlog")).toList();
            assertEquals(1, found.size(), found::toString);
            return found.get(0);
        }
    }

    /** Reads all outings; checks that what was said live is what a replay finds, field by field. */
    public static List<StoredOuting> readAll(Path file) throws IOException {
        return readFrom(file, 0);
    }

    /** Checks the whole file for damage; reads and checks the outings from {@code first} on, as {@link #readAll} does. */
    public static List<StoredOuting> readFrom(Path file, int first) throws IOException {
        List<StoredOuting> read = new ArrayList<>();
        try (Recording recording = Recording.open(file)) {
            assertEquals(List.of(), recording.verify().damages(), "damage");
            assertEquals(List.of(), recording.lostOutings(), "lost");
            for (Outing outing : recording.outings()) {
                if (outing.index() >= first) {
                    read.add(read(recording, outing));
                }
            }
        }
        return read;
    }

    private static StoredOuting read(Recording recording, Outing outing) throws IOException {
        WrittenEvents evidence = new WrittenEvents();
        recording.replay(outing, evidence);
        if (outing.closed()) {
            assertSaidIsFound(recording, outing);
        }
        return new StoredOuting(outing, evidence.lines(), recording.findings(outing), recording.seconds(outing));
    }

    private static void assertSaidIsFound(Recording recording, Outing outing) throws IOException {
        Found found = new Found();
        try {
            Rig rig = Rig.parse("stored rig", outing.start().rigToml());
            Detection detection = new Detection(
                    outing.start().instrument(),
                    rig,
                    LineCalibration.of(outing.start().calibration().response(), rig), // as the desk does it
                    found);
            recording.replay(outing, new ZeroShift(outing.start().instrument(), detection));
            if (!outing.ended()) {
                detection.end();
            }
        } catch (ConfigException e) {
            throw new IOException(e);
        }
        List<Finding> said = recording.findings(outing);
        assertEquals(found.findings.size(), said.size());
        assertEquals(new HashSet<>(found.findings), new HashSet<>(said));
        assertEquals(new HashSet<>(found.seconds), new HashSet<>(recording.seconds(outing)));
    }

    /** Every count, in order of its number. */
    public List<Integer> counts() {
        List<Integer> counts = new ArrayList<>();
        for (String line : evidence) {
            if (line.startsWith("tension ")) {
                String inner = line.substring(line.indexOf('[') + 1, line.indexOf(']'));
                for (String count : inner.split(", ")) {
                    counts.add(Integer.valueOf(count));
                }
            }
        }
        return counts;
    }

    /** The evidence of one kind. */
    public List<String> of(String kind) {
        return evidence.stream().filter(line -> line.startsWith(kind + " ")).toList();
    }

    private static final class Found implements FindingSink {
        private final List<Finding> findings = new ArrayList<>();
        private final List<Second> seconds = new ArrayList<>();

        @Override
        public void finding(Finding finding) {
            findings.add(finding);
        }

        @Override
        public void second(Second second) {
            seconds.add(second);
        }

        @Override
        public void cycle(long rangeCounts, long twiceMeanCounts, int halves) {}

        @Override
        public void shaftReading(long tick, double rpm) {}
    }
}
