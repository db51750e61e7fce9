package tautlog.desk.use;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.fixtures.ShortDay;
import tautlog.desk.progress.Progress;
import tautlog.recording.RecordingCopy;
import tautlog.recording.RecordingException;
import tautlog.recording.RecordingWriter;
import tautlog.rig.Rig;

/** A recorder writes while a history is made: each outing is as it was at one moment, and remembered so. */
class WhileWrittenTest {
    private static final String OTHER_RIG = SampleDay.rigToml() + "\n";

    @TempDir
    Path folder;

    private Path file = Path.of("");
    private Path cache = Path.of("");

    @BeforeEach
    void name() throws IOException {
        file = Files.createDirectory(folder.resolve("recordings")).resolve("live.tautlog");
        cache = folder.resolve("cache");
    }

    /** By a clock an hour ahead, by which what was written now is settled. */
    private static UseSettings settings(
            Optional<Path> cacheFolder, Optional<UseSettings.OtherRig> rig, Progress progress) {
        return new UseSettings(
                cacheFolder, "test", rig, 1, progress, () -> Instant.now().plusSeconds(3_600));
    }

    private static List<OutingUse> uses(Path file, UseSettings settings) throws IOException {
        return UseHistory.of(List.of(file), settings).outings();
    }

    private List<OutingUse> remembered() throws IOException {
        return uses(file, settings(Optional.of(cache), Optional.empty(), Progress.SILENT));
    }

    private List<OutingUse> read() throws IOException {
        return uses(file, settings(Optional.empty(), Optional.empty(), Progress.SILENT));
    }

    private static Optional<UseSettings.OtherRig> otherRig() throws IOException {
        try {
            return Optional.of(new UseSettings.OtherRig(Rig.parse("other", OTHER_RIG), OTHER_RIG));
        } catch (tautlog.config.ConfigException e) {
            throw new IOException(e);
        }
    }

    /** Outings of a tenth of a second, one after the other, until told to stop. */
    private static void writeOutings(RecordingWriter writer, AtomicBoolean stop) {
        try {
            for (int boot = 1; !stop.get(); boot++) {
                ShortDay day = ShortDay.begun(writer, boot);
                for (int i = 0; i < 4; i++) {
                    day.hold(0.1, 500);
                    day.commit();
                }
                day.end();
            }
        } catch (RecordingException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void noOutingThatGoesOnHasGapsThatAreNone() throws Exception {
        List<OutingUse> seen = new ArrayList<>();
        try (RecordingWriter writer = RecordingWriter.open(file, "live")) {
            ShortDay.append(writer, 0, 0, SampleDay.rigToml(), day -> day.hold(1, 500));
            AtomicBoolean stop = new AtomicBoolean();
            Thread recorder = new Thread(() -> writeOutings(writer, stop));
            recorder.start();
            try {
                for (int run = 0; run < 40; run++) {
                    seen.addAll(remembered());
                }
            } finally {
                stop.set(true);
                recorder.join();
            }
        }

        List<OutingUse> odd =
                seen.stream().filter(use -> use.coverage().gaps().hours() != 0).toList();
        assertTrue(odd.isEmpty(), () -> odd.size() + " of " + seen.size() + ", the first " + odd.get(0));
        assertEquals(read(), remembered());
    }

    /** Under another rig only the head was remembered; its outings are read when the recorder has gone on. */
    @Test
    void whatIsReadLaterThanItsHeadIsRememberedForWhatItIs() throws Exception {
        Path before = folder.resolve("before.tautlog");
        try (RecordingWriter writer = RecordingWriter.open(file, "live")) {
            ShortDay day = ShortDay.begun(writer, 1);
            day.hold(3, 500);
            day.commit();
            RecordingCopy.write(file, before);
            remembered();
            Progress goesOn = sofar -> {
                if (sofar.what().equals("files")) {
                    end(day);
                }
            };

            List<OutingUse> read = uses(file, settings(Optional.of(cache), otherRig(), goesOn));

            assertEquals(4_000, read.get(0).samples());
        }
        assertEquals(
                uses(before, settings(Optional.empty(), otherRig(), Progress.SILENT)),
                uses(before, settings(Optional.of(cache), otherRig(), Progress.SILENT)));
    }

    private static void end(ShortDay day) {
        try {
            day.hold(5, 500);
            day.end();
        } catch (RecordingException e) {
            throw new UncheckedIOException(e);
        }
    }
}
