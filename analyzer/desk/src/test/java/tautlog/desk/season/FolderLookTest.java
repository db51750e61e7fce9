package tautlog.desk.season;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.SampleDay;
import tautlog.recording.OutingWriter;
import tautlog.recording.RecordingException;
import tautlog.recording.RecordingWriter;

class FolderLookTest {
    @TempDir
    Path folder;

    private static OutingWriter begun(RecordingWriter writer) throws RecordingException {
        OutingWriter outing = writer.begin(SampleDay.start());
        outing.tension(0, 0, 0, new int[500], 0, 500);
        outing.commit();
        return outing;
    }

    /** A commit changes the file's size and time first and can be read only when the disk has it: a look between the two missed it for good. */
    @Test
    void looksAgainAtARecordingWhoseLogWasWrittenLately() throws Exception {
        try (RecordingWriter writer = RecordingWriter.open(folder.resolve("live.tautlog"), "upper-landing")) {
            begun(writer);
            FolderLook look = new FolderLook(folder, ZoneOffset.UTC);
            KnownSeason first = look.look(KnownSeason.nothing(ZoneOffset.UTC));

            KnownSeason lately = look.look(first);
            for (String name : List.of("live.tautlog", "live.tautlog-wal")) {
                Files.setLastModifiedTime(folder.resolve(name), FileTime.from(Instant.parse("2026-05-04T07:00:00Z")));
            }
            KnownSeason settled = look.look(lately);
            KnownSeason later = look.look(settled);

            assertEquals(1, first.outings().size());
            assertNotSame(first, lately);
            assertSame(settled, later);
        }
    }

    /** A day whose recording had grown by samples that were not sealed yet was never worked out anew. */
    @Test
    void whatIsNotSealedYetIsAnotherStateOfTheOuting() throws Exception {
        try (RecordingWriter writer = RecordingWriter.open(folder.resolve("live.tautlog"), "upper-landing")) {
            OutingWriter outing = begun(writer);
            FolderLook look = new FolderLook(folder, ZoneOffset.UTC);
            KnownSeason first = look.look(KnownSeason.nothing(ZoneOffset.UTC));
            KnownSeason same = look.look(first);
            outing.tension(500, 1_000_000, 0, new int[500], 0, 500);
            outing.commit();
            KnownSeason grown = look.look(same);

            assertEquals(first.stamp(), same.stamp());
            assertEquals(
                    first.stamp(first.outings().get(0)),
                    same.stamp(same.outings().get(0)));
            assertNotEquals(same.stamp(), grown.stamp());
            assertNotEquals(
                    same.stamp(same.outings().get(0)),
                    grown.stamp(grown.outings().get(0)));
        }
    }
}
