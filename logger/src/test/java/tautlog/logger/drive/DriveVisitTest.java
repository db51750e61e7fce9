package tautlog.logger.drive;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.logger.drive.DriveState.Tally;
import tautlog.logger.recorder.DiskReserve;
import tautlog.logger.recorder.DoorInTests;
import tautlog.logger.recorder.RecordingDoor;
import tautlog.logger.recorder.RecordingFiles;
import tautlog.recording.NotedLink;
import tautlog.recording.Recording;
import tautlog.recording.RecordingWriter;

/** Visits to a folder that stands for a drive; real ones: {@code DriveIT}. */
class DriveVisitTest {
    private static final String MONDAY = "upper_2026-05-04.tautlog";
    private static final String TUESDAY = "upper_2026-05-05.tautlog";

    @TempDir
    Path path;

    private Path recordings = Path.of("");
    private Path drive = Path.of("");
    private Path ours = Path.of("");

    @BeforeEach
    void folders() throws IOException {
        recordings = Files.createDirectory(path.resolve("recordings"));
        drive = Files.createDirectory(path.resolve("drive"));
        ours = drive.resolve("tautlog/upper");
    }

    private RecordingFiles files() {
        return new RecordingFiles(recordings, "Upper");
    }

    private Tally visit(Optional<Path> beingWritten) {
        return visit(beingWritten, Optional.of(1L << 40));
    }

    private Tally visit(Optional<Path> beingWritten, Optional<Long> freeHere) {
        InstantSource clock = InstantSource.fixed(Instant.parse("2026-05-05T17:00:00Z"));
        return new DriveVisit(files(), () -> freeHere, clock).serve(drive, () -> beingWritten, () -> true);
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    private static String lastLink(Path file) throws IOException {
        try (Recording recording = Recording.open(file)) {
            assertTrue(recording.verify().isIntact(), file::toString);
            return recording.lastLink();
        }
    }

    @Test
    void copiesClosedDaysAndTodayAndNotesTheirLinks() throws IOException {
        // given
        SmallRecordings.closed(recordings.resolve(MONDAY), 1);
        Path today = recordings.resolve(TUESDAY);
        try (RecordingWriter writer = SmallRecordings.open(today)) {
            SmallRecordings.outing(writer, 2);

            // when
            Tally tally = visit(Optional.of(today));

            // then
            assertEquals(List.of(), tally.trouble());
            assertEquals(2, tally.copied());
            assertEquals(List.of("last-links.txt", MONDAY, TUESDAY), names(ours));
            assertEquals(lastLink(recordings.resolve(MONDAY)), lastLink(ours.resolve(MONDAY)));
            assertEquals(lastLink(today), lastLink(ours.resolve(TUESDAY)));
            assertFalse(names(recordings).contains("drive-copy.part"));
            List<NotedLink> noted = Files.readAllLines(ours.resolve("last-links.txt")).stream()
                    .flatMap(line -> NotedLink.in(line).stream())
                    .toList();
            assertEquals(
                    List.of(MONDAY, TUESDAY),
                    noted.stream().map(NotedLink::file).toList());
            assertEquals(lastLink(recordings.resolve(MONDAY)), noted.get(0).link());
        }
        try (Recording recording = Recording.open(today)) {
            for (NotedLink link : Files.readAllLines(ours.resolve("last-links.txt")).stream()
                    .flatMap(line -> NotedLink.in(line).stream())
                    .skip(1)
                    .toList()) {
                assertTrue(recording.goesThrough(link.link()), "the link noted while recording stays");
            }
        }
    }

    @Test
    void bringsACopyWithSpacesInItsNameAndWhatComesBehindIt() throws IOException {
        String copy = "upper_2026-05-04 (copy).tautlog";
        SmallRecordings.closed(recordings.resolve(copy), 1);
        SmallRecordings.closed(recordings.resolve(TUESDAY), 2);

        Tally tally = visit(Optional.empty());

        assertEquals(List.of(), tally.trouble());
        assertEquals(List.of("last-links.txt", copy, TUESDAY), names(ours));
        assertEquals(
                List.of(TUESDAY),
                Files.readAllLines(ours.resolve("last-links.txt")).stream()
                        .flatMap(line -> NotedLink.in(line).stream())
                        .map(NotedLink::file)
                        .toList());
    }

    @Test
    void leavesWhatIsThereAndReplacesWhatGrew() throws IOException {
        SmallRecordings.closed(recordings.resolve(MONDAY), 1);
        SmallRecordings.closed(recordings.resolve(TUESDAY), 2);
        visit(Optional.empty());
        byte[] monday = Files.readAllBytes(ours.resolve(MONDAY));
        SmallRecordings.closed(recordings.resolve(TUESDAY), 3); // a second outing in the same file

        Tally tally = visit(Optional.empty());

        assertEquals(1, tally.copied());
        assertEquals(1, tally.kept());
        assertArrayEquals(monday, Files.readAllBytes(ours.resolve(MONDAY)));
        assertEquals(lastLink(recordings.resolve(TUESDAY)), lastLink(ours.resolve(TUESDAY)));
    }

    @Test
    void neverReplacesACopyThatHoldsMore() throws IOException {
        // given: the drive has two outings of the day, the board only the first, as after a card was changed
        SmallRecordings.closed(recordings.resolve(MONDAY), 1);
        Path first = path.resolve("first");
        Files.copy(recordings.resolve(MONDAY), first);
        SmallRecordings.closed(recordings.resolve(MONDAY), 2);
        visit(Optional.empty());
        byte[] longer = Files.readAllBytes(ours.resolve(MONDAY));
        Files.delete(recordings.resolve(MONDAY));
        Files.copy(first, recordings.resolve(MONDAY));

        // when
        Tally tally = visit(Optional.empty());

        // then
        assertEquals(0, tally.copied());
        assertEquals(1, tally.kept());
        assertArrayEquals(longer, Files.readAllBytes(ours.resolve(MONDAY)));
    }

    @Test
    void putsAnotherRecordingOfTheSameNameBesideTheOneThatIsThere() throws IOException {
        SmallRecordings.closed(recordings.resolve(MONDAY), 1);
        visit(Optional.empty());
        byte[] before = Files.readAllBytes(ours.resolve(MONDAY));
        Files.delete(recordings.resolve(MONDAY));
        SmallRecordings.closed(recordings.resolve(MONDAY), 9);

        Tally tally = visit(Optional.empty());

        assertEquals(1, tally.copied());
        assertArrayEquals(before, Files.readAllBytes(ours.resolve(MONDAY)));
        assertEquals(lastLink(recordings.resolve(MONDAY)), lastLink(ours.resolve("upper_2026-05-04_2.tautlog")));
        assertEquals(1, visit(Optional.empty()).kept(), "and finds it there the next time");
    }

    @Test
    void replacesWhatAVisitThatWasCutOffLeft() throws IOException {
        SmallRecordings.closed(recordings.resolve(MONDAY), 1);
        Files.createDirectories(ours);
        Files.writeString(ours.resolve(MONDAY + ".part"), "half");
        Files.writeString(ours.resolve(MONDAY + ".part-journal"), "half");
        Files.writeString(ours.resolve("upper_undated-1.tautlog.part"), "half of one that has another name by now");
        Files.writeString(recordings.resolve("drive-copy.part"), "half");

        Tally tally = visit(Optional.empty());

        assertEquals(List.of(), tally.trouble());
        assertEquals(List.of("last-links.txt", MONDAY), names(ours));
        assertEquals(List.of(MONDAY), names(recordings));
    }

    @Test
    void copiesADamagedRecordingWithItsDamageAndTheOthersToo() throws IOException {
        SmallRecordings.closed(recordings.resolve(MONDAY), 1);
        SmallRecordings.damage(recordings.resolve(MONDAY));
        Files.writeString(recordings.resolve("upper_2026-05-03.tautlog"), "no recording at all ".repeat(100));
        SmallRecordings.closed(recordings.resolve(TUESDAY), 2);

        Tally tally = visit(Optional.empty());

        assertEquals(2, tally.copied(), tally::toString);
        assertEquals(1, tally.trouble().size(), tally::toString);
        assertTrue(tally.trouble().get(0).contains("upper_2026-05-03.tautlog"), tally::toString);
        assertEquals(List.of("last-links.txt", MONDAY, TUESDAY), names(ours));
        try (Recording copy = Recording.open(ours.resolve(MONDAY))) {
            assertEquals(1, copy.verify().damages().size());
        }
    }

    @Test
    void doesNotFillTheDiskOfTheRecordingsForToday() throws IOException {
        SmallRecordings.closed(recordings.resolve(MONDAY), 1);
        Path today = recordings.resolve(TUESDAY);
        try (RecordingWriter writer = SmallRecordings.open(today)) {
            SmallRecordings.outing(writer, 2);

            Tally tally = visit(Optional.of(today), Optional.of(DiskReserve.BYTES));

            assertEquals(1, tally.copied());
            assertTrue(tally.trouble().get(0).contains("no room for a copy"), tally::toString);
            assertEquals(List.of("last-links.txt", MONDAY), names(ours));
        }
    }

    @Test
    void endsBeforeTheNextRecordingWhenTheLoggerStops() throws IOException {
        SmallRecordings.closed(recordings.resolve(MONDAY), 1);
        SmallRecordings.closed(recordings.resolve(TUESDAY), 2);
        DriveVisit visit = new DriveVisit(files(), Optional::empty, InstantSource.system());

        Tally tally = visit.serve(drive, Optional::empty, () -> {
            if (Files.exists(ours.resolve(MONDAY))) {
                Thread.currentThread().interrupt();
            }
            return true;
        });

        assertTrue(Thread.interrupted(), "the thread is still told to end");
        assertEquals(List.of(MONDAY), names(ours));
        assertTrue(tally.trouble().get(0).contains("the logger was stopped"), tally::toString);
    }

    @Test
    void readsNothingWhileARecordingIsClosed() throws Exception {
        SmallRecordings.closed(recordings.resolve(MONDAY), 1);
        RecordingFiles files = files();
        Thread visit = new Thread(() -> new DriveVisit(files, Optional::empty, InstantSource.system())
                .serve(drive, Optional::empty, () -> true));

        DoorInTests.close(files.door(), () -> {
            visit.start();
            while (visit.isAlive() && !standsBeforeTheDoor(visit)) {
                Thread.onSpinWait();
            }
            assertTrue(visit.isAlive());
            assertEquals(List.of(), names(ours));
        });

        visit.join();
        assertEquals(List.of("last-links.txt", MONDAY), names(ours));
    }

    private static boolean standsBeforeTheDoor(Thread visit) {
        return visit.getState() == Thread.State.WAITING
                && Stream.of(visit.getStackTrace())
                        .anyMatch(frame -> frame.getClassName().equals(RecordingDoor.class.getName()));
    }

    @Test
    void takesASnapshotOfEveryRecordingThatAnOutingMayBeginIn() throws IOException {
        // given: one snapshot has no room here, so what is copied went straight onto the drive
        String undated = "upper_undated-1.tautlog";
        SmallRecordings.closed(recordings.resolve(MONDAY), 1);
        SmallRecordings.closed(recordings.resolve(TUESDAY), 2);
        SmallRecordings.closed(recordings.resolve("upper_2026-05-05_2.tautlog"), 3);
        SmallRecordings.closed(recordings.resolve(undated), 4);

        Tally tally = visit(Optional.empty(), Optional.of(DiskReserve.BYTES));

        assertEquals(List.of("last-links.txt", MONDAY), names(ours));
        assertEquals(3, tally.trouble().size(), tally::toString);
    }

    @Test
    void asksForEachRecordingWhetherItIsWrittenNow() throws IOException {
        // given: an outing begins in Monday's file, whose day is over by this clock, when the visit is at Sunday's
        String sunday = "upper_2026-05-03.tautlog";
        SmallRecordings.closed(recordings.resolve(sunday), 1);
        SmallRecordings.closed(recordings.resolve(MONDAY), 2);
        InstantSource clock = InstantSource.fixed(Instant.parse("2026-05-05T17:00:00Z"));

        Tally tally = new DriveVisit(files(), () -> Optional.of(DiskReserve.BYTES), clock)
                .serve(
                        drive,
                        () -> Optional.of(recordings.resolve(MONDAY))
                                .filter(began -> Files.exists(ours.resolve(sunday))),
                        () -> true);

        assertEquals(List.of("last-links.txt", sunday), names(ours));
        assertTrue(tally.trouble().get(0).contains(MONDAY), tally::toString);
    }

    @Test
    void leavesNothingInTheFolderOfADriveThatWentBetweenTwoLooks() throws IOException {
        SmallRecordings.closed(recordings.resolve(MONDAY), 1);
        Queue<Boolean> looks = new ArrayDeque<>(List.of(true));
        DriveVisit visit = new DriveVisit(files(), Optional::empty, InstantSource.system());

        Tally tally = visit.serve(
                drive, Optional::empty, () -> Optional.ofNullable(looks.poll()).orElse(false));

        assertEquals(List.of(), names(drive));
        assertTrue(tally.trouble().get(0).contains("pulled out"), tally::toString);
    }
}
