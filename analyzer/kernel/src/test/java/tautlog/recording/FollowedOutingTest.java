package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.fixtures.EvidenceLog;

/** A replay in pieces, while the recording grows, tells what one replay tells. */
class FollowedOutingTest {
    @TempDir
    Path folder;

    @Test
    void tellsSealedRowsOnceAndTheTailAnewAtEachLook() throws IOException {
        Story story = Story.plain(3, 3_000);
        Path file = folder.resolve("a.tautlog");
        EvidenceLog sealed = new EvidenceLog();
        List<String> all = new ArrayList<>();
        long row = 0;
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            OutingWriter outing = writer.begin(Story.START);
            Random commits = new Random(5);
            for (int from = 0; from < story.size(); ) {
                int to = Math.min(story.size(), from + 1 + commits.nextInt(900));
                story.tell(outing, from, to);
                outing.commit();
                from = to;
                EvidenceLog tail = new EvidenceLog();
                try (Recording recording = Recording.open(file)) {
                    row = recording.follow(recording.outings().get(0), row, sealed, () -> tail);
                }
                all = new ArrayList<>(sealed.lines());
                all.addAll(tail.lines());
                assertEquals(
                        story.lines().subList(0, to).stream().sorted().toList(),
                        all.stream().sorted().toList());
            }
        }
        assertTrue(row > 3, "several spans were sealed");
    }

    @Test
    void tellsOneSpanWithoutThoseBeforeIt() throws IOException {
        Path file = folder.resolve("a.tautlog");
        try (RecordingWriter writer = RecordingWriter.open(file, "winch-1")) {
            OutingWriter outing = writer.begin(Story.START);
            Story story = Story.plain(4, 3_000);
            story.tell(outing, 0, story.size());
            outing.end();
            outing.commit();
        }
        try (Recording recording = Recording.open(file)) {
            Outing outing = recording.outings().get(0);
            CountLog whole = new CountLog();
            recording.replay(outing, whole);
            CountLog pieces = new CountLog();
            List<SealedSpan> spans = recording.sealedSpans(outing, 0);
            for (SealedSpan span : spans) {
                recording.replay(outing, span.firstRow(), span.lastRow(), pieces);
            }
            assertTrue(spans.size() > 2, spans.toString());
            assertEquals(whole.samples, pieces.samples);
        }
    }
}
