package tautlog.logger.publish;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.calibration.CellCalibration;
import tautlog.detect.Finding;
import tautlog.detect.Second;
import tautlog.logger.LoggerFolder;
import tautlog.logger.publish.PublisherState.Word;
import tautlog.logger.recorder.RecordingFiles;
import tautlog.recording.OutingStart;
import tautlog.recording.OutingWriter;
import tautlog.recording.RecordingException;
import tautlog.recording.RecordingWriter;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;

/** The publisher over real recordings, against an outlet that misbehaves as it is told. */
class PublisherTest {
    private static final Patience HURRIED = new Patience(1, 1_000, 1, 4, 60_000, 20);
    private static final Instrument INSTRUMENT = new Instrument("TL-0001", 1, 0, 7, 1_000_000, 10_000, 8_388_607, 6);

    @TempDir
    Path folder;

    private final List<Publisher> started = new ArrayList<>();
    private final List<Thread> threads = new ArrayList<>();
    private volatile Instant now = Instant.parse("2026-05-04T08:00:00Z");
    private Patience patience = HURRIED;
    private final CommitSignal signal = new CommitSignal();

    /** Takes everything, or does once what it is told next. */
    private static class TestOutlet implements Outlet {
        /** What it does with one delivery. */
        interface Act {
            void on(List<Item> items) throws Away, Refused;
        }

        final List<String> arrived = new CopyOnWriteArrayList<>();
        final List<Announcement> news = new CopyOnWriteArrayList<>();
        final BlockingQueue<Act> acts = new ArrayBlockingQueue<>(100);
        volatile String poison = "none";

        @Override
        public void deliver(List<Item> items) throws Away, Refused {
            Act act = acts.poll();
            if (act != null) {
                act.on(items);
            }
            if (items.stream().anyMatch(item -> item.position().endsWith(poison))) {
                throw new Refused("400 unable to parse");
            }
            items.stream()
                    .filter(item -> !(item instanceof Item.OfMeters))
                    .forEach(item -> arrived.add(item.position()));
        }

        @Override
        public Announced announce(Announcement said) {
            news.add(said);
            return Announced.ACKNOWLEDGED;
        }

        @Override
        public void close() {}
    }

    private Publisher start(Outlet outlet) {
        Publisher publisher = new Publisher(
                new Publisher.Plan(
                        "test",
                        new RecordingFiles(folder, "upper-landing"),
                        folder,
                        10,
                        signal,
                        patience,
                        () -> now,
                        JsonObject::new),
                () -> outlet);
        Thread thread = new Thread(publisher, "publisher under test");
        thread.setDaemon(true);
        started.add(publisher);
        threads.add(thread);
        thread.start();
        signal.committed();
        return publisher;
    }

    @AfterEach
    void stopAll() throws InterruptedException {
        started.forEach(Publisher::stop);
        threads.forEach(Thread::interrupt);
        for (Thread thread : threads) {
            thread.join();
        }
        started.clear();
        threads.clear();
    }

    private static void await(BooleanSupplier condition, Object shown) throws InterruptedException {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(20);
        while (!condition.getAsBoolean()) {
            assertTrue(System.nanoTime() < end, () -> "not within 20 s: " + shown);
            Thread.sleep(2);
        }
    }

    private static void tell(OutingWriter outing, long from, long to) throws IOException {
        for (long index = from; index < to; index++) {
            int[] counts = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10};
            outing.tension(index * 10, index * 1_000_000, 0, counts, 0, 10);
            outing.second(new Second(index, index * 10, 1, 10, 55, 10, OptionalDouble.empty(), "straight", 0.1, 0));
            if (index % 9 == 4) {
                outing.finding(new Finding.Jolt(index * 10, 1, index * 10 + 5, 6, "straight", false));
            }
        }
        outing.commit();
    }

    private RecordingWriter writer(String day) throws IOException {
        return RecordingWriter.open(folder.resolve("upper-landing_" + day + ".tautlog"), "upper-landing");
    }

    private static OutingWriter begin(RecordingWriter writer) throws IOException {
        return writer.begin(new OutingStart(
                INSTRUMENT,
                LoggerFolder.RIG,
                CellCalibration.written(Calibration.of("0", "0.01")),
                "tautlogd 0.1.0",
                OutingStart.Source.INSTRUMENT));
    }

    private static void clock(OutingWriter outing) {
        outing.clock(0, Instant.parse("2026-05-04T07:00:00Z").toEpochMilli() * 1_000);
    }

    /** An outing of {@code seconds}, closed. */
    private void record(String day, int seconds) throws IOException {
        try (RecordingWriter writer = writer(day)) {
            OutingWriter outing = begin(writer);
            clock(outing);
            tell(outing, 0, seconds);
            outing.end();
            outing.commit();
        }
    }

    /** Seconds of one recording in the order in which they first arrived, without what comes before the last slash. */
    private static List<Long> seconds(TestOutlet outlet) {
        return new LinkedHashSet<>(outlet.arrived)
                .stream()
                        .filter(position -> position.contains("/s/"))
                        .map(position -> Long.valueOf(position.substring(position.lastIndexOf('/') + 1)))
                        .toList();
    }

    private static List<Long> upTo(long count) {
        List<Long> all = new ArrayList<>();
        for (long i = 0; i < count; i++) {
            all.add(i);
        }
        return all;
    }

    @Test
    void deliversWhatIsRecordedWhileItIsRecorded() throws Exception {
        TestOutlet outlet = new TestOutlet();
        try (RecordingWriter writer = writer("2026-05-04")) {
            OutingWriter outing = begin(writer);
            clock(outing);
            tell(outing, 0, 25);
            start(outlet);
            await(() -> seconds(outlet).size() == 25, outlet.arrived);

            tell(outing, 25, 60);
            signal.committed();
            await(() -> seconds(outlet).size() == 60, outlet.arrived);
        }
        assertEquals(upTo(60), seconds(outlet));
        assertEquals(
                7,
                outlet.arrived.stream()
                        .filter(position -> position.contains("/f/"))
                        .count());
    }

    @Test
    void goesOnAfterARestartWhereItWasAcknowledgedAndNotBefore() throws Exception {
        record("2026-05-04", 40);
        TestOutlet first = new TestOutlet();
        first.acts.add(items -> {}); // one portion arrives
        for (int i = 0; i < 99; i++) {
            first.acts.add(items -> {
                throw new Away("cable cut");
            });
        }
        Publisher publisher = start(first);
        await(() -> publisher.state().word() == Word.AWAY && !first.arrived.isEmpty(), first.arrived);
        assertEquals("cable cut", publisher.state().why().orElse(""));
        stopAll();

        TestOutlet second = new TestOutlet();
        start(second);
        await(() -> second.arrived.size() + first.arrived.size() >= 44, second.arrived);

        List<Long> both = new ArrayList<>(seconds(first));
        both.addAll(seconds(second));
        assertEquals(upTo(40), both);
    }

    @Test
    void setsAsideTheOneThatIsRefusedAndNoOther() throws Exception {
        record("2026-05-04", 40);
        TestOutlet outlet = new TestOutlet();
        outlet.poison = "/s/17";
        Publisher publisher = start(outlet);
        await(() -> seconds(outlet).size() == 39, outlet.arrived);

        List<Long> expected = new ArrayList<>(upTo(40));
        expected.remove(17);
        assertEquals(expected, seconds(outlet));
        assertEquals(1, publisher.state().refused());
        stopAll();

        Publisher again = start(new TestOutlet());
        await(() -> again.state().refused() == 1, "the count is kept");
    }

    @Test
    void countsARefusedOneOnceThoughItsPortionIsDeliveredTwice() throws Exception {
        record("2026-05-04", 40);
        CountDownLatch away = new CountDownLatch(1);
        TestOutlet outlet = new TestOutlet() {
            @Override
            public void deliver(List<Item> items) throws Away, Refused {
                if (items.get(0).position().endsWith("/s/4") && away.getCount() > 0) {
                    away.countDown(); // what came before it was refused and set aside
                    throw new Away("cable cut");
                }
                super.deliver(items);
            }
        };
        outlet.poison = "/s/3";
        Publisher publisher = start(outlet);
        await(() -> seconds(outlet).size() == 39, outlet.arrived);

        assertEquals(0, away.getCount());
        assertEquals(1, publisher.state().refused());
    }

    @Test
    void doesNotSayConnectedBeforeTheServerTookAnythingNorHowOldIsWhatHasNoTime() throws Exception {
        TestOutlet outlet = new TestOutlet() {
            @Override
            public Announced announce(Announcement said) {
                super.announce(said);
                return Announced.NOT_KEPT;
            }
        };
        try (RecordingWriter writer = writer("undated-1")) {
            OutingWriter outing = begin(writer);
            tell(outing, 0, 12);
            Publisher publisher = start(outlet);
            await(() -> publisher.state().lagItems() == 13 && !outlet.news.isEmpty(), publisher);
            assertEquals(Word.WAITING, publisher.state().word());
            assertEquals(OptionalDouble.empty(), publisher.state().lagSeconds());

            clock(outing);
            outing.commit();
            signal.committed();
            await(() -> publisher.state().lagSeconds().equals(OptionalDouble.of(0)), publisher.state());
            assertEquals(Word.CONNECTED, publisher.state().word());
        }
    }

    @Test
    void survivesWhatNoProgramShouldSurvive() throws Exception {
        record("2026-05-04", 40);
        TestOutlet outlet = new TestOutlet();
        outlet.acts.add(items -> {
            throw new OutOfMemoryError("of the test");
        });
        outlet.acts.add(items -> {
            throw new StackOverflowError("of the test");
        });
        outlet.acts.add(items -> {
            throw new IllegalStateException("a bug of the test");
        });
        start(outlet);
        await(() -> seconds(outlet).size() == 40, outlet.arrived);

        assertEquals(upTo(40), seconds(outlet));
    }

    @Test
    void repeatsAndLosesNothingWhenItsStateIsDamaged() throws Exception {
        record("2026-05-04", 20);
        TestOutlet first = new TestOutlet();
        start(first);
        await(() -> seconds(first).size() == 20, first.arrived);
        stopAll();
        Files.writeString(folder.resolve("state.db"), "no database, but long enough to be taken for one. ".repeat(50));
        Files.deleteIfExists(folder.resolve("state.db-wal"));

        TestOutlet second = new TestOutlet();
        start(second);
        await(() -> seconds(second).size() == 20, second.arrived);

        assertEquals(upTo(20), seconds(second));
    }

    @Test
    void waitsForAClockAndPassesOverAnOutingThatNeverGotOne() throws Exception {
        TestOutlet outlet = new TestOutlet();
        try (RecordingWriter writer = writer("undated-1")) {
            OutingWriter never = begin(writer);
            tell(never, 0, 20);
            never.end();
            never.commit();
            OutingWriter later = begin(writer);
            tell(later, 0, 12);
            Publisher publisher = start(outlet);
            await(() -> publisher.state().passedOver() == 1, publisher.state());
            assertEquals(List.of(), outlet.arrived);

            clock(later);
            later.commit();
            signal.committed();
            await(() -> seconds(outlet).size() == 12, outlet.arrived);
            assertTrue(
                    outlet.arrived.stream().allMatch(position -> position.contains("/1/")), outlet.arrived::toString);
        }
    }

    @Test
    void saysTheLinkOfAnOutingThatIsOver() throws Exception {
        record("2026-05-03", 20);
        record("2026-05-04", 20);
        TestOutlet outlet = new TestOutlet();
        start(outlet);
        await(
                () -> outlet.news.stream()
                                        .filter(news -> news.json().contains("last_link"))
                                        .count()
                                >= 2
                        && outlet.news.stream().anyMatch(news -> news.json().contains("2026-05-03")),
                outlet.news);

        String link = outlet.news.stream()
                .map(Announcement::json)
                .filter(json -> json.contains("2026-05-03"))
                .findFirst()
                .orElse("none");
        assertTrue(link.matches(".*upper-landing_2026-05-03\\.tautlog.*\"last_link\":\"[0-9a-f]{64}\".*"), link);
    }

    @Test
    void followsTheFileThatGoesOnAndNotACopyBesideIt() throws Exception {
        for (String copy : List.of("2026-05-04_2", "2026-05-04 (copy)", "2026-05-03")) {
            TestOutlet outlet = new TestOutlet();
            Path original;
            Path copied = folder.resolve("upper-landing_" + copy + ".tautlog");
            try (RecordingWriter writer = writer("2026-05-04")) {
                original = folder.resolve("upper-landing_2026-05-04.tautlog");
                OutingWriter outing = begin(writer);
                clock(outing);
                tell(outing, 0, 25);
                Files.copy(original, copied);
                Files.copy(log(original), log(copied));
                Files.setLastModifiedTime(copied, FileTime.from(Instant.parse("2099-01-01T00:00:00Z")));
                start(outlet);
                await(() -> seconds(outlet).size() == 25, outlet.arrived);
                tell(outing, 25, 60);
                await(
                        () -> {
                            signal.committed(); // as a logger does each second
                            return seconds(outlet).size() == 60;
                        },
                        copy);
            }
            assertEquals(upTo(60), seconds(outlet));
            stopAll();
            for (Path file : List.of(original, copied, log(copied))) {
                Files.deleteIfExists(file);
            }
        }
    }

    private static Path log(Path file) {
        return file.resolveSibling(file.getFileName() + "-wal");
    }

    @Test
    void saysWhileItIsAwayHowMuchWaitsByNowAndHowOldTheOldestOfItIs() throws Exception {
        TestOutlet outlet = new TestOutlet() {
            @Override
            public void deliver(List<Item> items) throws Away {
                throw new Away("cable cut");
            }
        };
        try (RecordingWriter writer = writer("2026-05-04")) {
            OutingWriter outing = begin(writer);
            clock(outing);
            tell(outing, 0, 25);
            Publisher publisher = start(outlet);
            await(() -> publisher.state().lagItems() == 28 && publisher.state().word() == Word.AWAY, publisher);
            assertEquals(OptionalDouble.of(3_600), publisher.state().lagSeconds());

            tell(outing, 25, 60);
            now = now.plusSeconds(60);
            await(() -> publisher.state().lagItems() == 67, publisher);
            assertEquals(OptionalDouble.of(3_660), publisher.state().lagSeconds());
        }
    }

    @Test
    void saysTheStatusWhileItCatchesUp() throws Exception {
        patience = new Patience(1, 1_000, 1, 4, 0, 20); // a heartbeat is always due
        record("2026-05-04", 40);
        List<Integer> beats = new CopyOnWriteArrayList<>();
        TestOutlet outlet = new TestOutlet() {
            @Override
            public void deliver(List<Item> items) throws Away, Refused {
                beats.add(news.size());
                super.deliver(items);
            }
        };
        start(outlet);
        await(() -> seconds(outlet).size() == 40, outlet.arrived);

        assertTrue(beats.get(3) >= 3, beats::toString);
    }

    @Test
    void countsWhatCannotBeReadAndGoesOnWithTheRest() throws Exception {
        record("2026-05-03", 20);
        record("2026-05-04", 20);
        record("2026-05-05", 20);
        change("2026-05-03", "ALTER TABLE finding RENAME TO gone"); // not even its rows can be counted
        change("2026-05-04", "ALTER TABLE finding RENAME COLUMN json TO gone");
        TestOutlet outlet = new TestOutlet();
        Publisher publisher = start(outlet);
        await(() -> seconds(outlet).size() == 20 && publisher.state().unreadable() == 2, publisher);

        change("2026-05-03", "ALTER TABLE gone RENAME TO finding");
        change("2026-05-04", "ALTER TABLE finding RENAME COLUMN gone TO json");
        await(
                () -> {
                    signal.committed();
                    return outlet.arrived.size() == 66 && publisher.state().unreadable() == 0;
                },
                publisher);
    }

    private void change(String day, String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection(
                        "jdbc:sqlite:" + folder.resolve("upper-landing_" + day + ".tautlog"));
                Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    @Test
    void looksIntoTheFolderAtOnceOnlyForWhatIsGone() throws Exception {
        record("2026-05-04", 20);
        RecordingFiles files = new RecordingFiles(folder, "upper-landing");
        Shelf shelf = new Shelf(files, new Cursors(folder, "test"));
        shelf.scan();
        Followed followed = shelf.open().get(0);

        assertFalse(shelf.lost(followed, new RecordingException("cannot be read, says the test")));
        assertEquals(1, shelf.unreadable());
        Files.delete(followed.file());
        assertTrue(shelf.lost(followed, new RecordingException("is gone, says the test")));
        shelf.scan();
        assertEquals(0, shelf.unreadable());
    }

    @Test
    void survivesAFaultWhileItDealsWithAFault() throws Exception {
        record("2026-05-04", 40);
        Semaphore faults = new Semaphore(3);
        TestOutlet outlet = new TestOutlet() {
            @Override
            public void close() {
                if (faults.tryAcquire()) {
                    throw new OutOfMemoryError("of the test, once more");
                }
            }
        };
        CountDownLatch seen = new CountDownLatch(1);
        for (int i = 0; i < 4; i++) {
            outlet.acts.add(items -> {
                throw new OutOfMemoryError("of the test");
            });
        }
        outlet.acts.add(items -> {
            try {
                seen.await();
            } catch (InterruptedException stopped) {
                throw new IllegalStateException(stopped);
            }
        });
        Publisher publisher = start(outlet);
        await(() -> outlet.acts.isEmpty(), publisher);
        assertEquals(0, faults.availablePermits());
        assertEquals(Word.AWAY, publisher.state().word());
        seen.countDown();
        await(() -> seconds(outlet).size() == 40, outlet.arrived);
        await(() -> publisher.state().word() == Word.CONNECTED, publisher);
    }

    @Test
    void saysTheLinkEachDayAlsoAfterAClockThatStoodInTheFuture() throws Exception {
        patience = new Patience(1, 1_000, 1, 4, 1, 20);
        now = Instant.parse("2099-01-01T08:00:00Z");
        TestOutlet outlet = new TestOutlet();
        try (RecordingWriter writer = writer("2026-05-04")) {
            OutingWriter outing = begin(writer);
            clock(outing);
            tell(outing, 0, 25);
            start(outlet);
            await(() -> outlet.news.stream().anyMatch(news -> news.json().contains("2099-01-01")), outlet.news);

            now = Instant.parse("2026-05-04T08:00:00Z");
            await(() -> outlet.news.stream().anyMatch(news -> news.json().contains("2026-05-04T08:00:00Z")), "link");
        }
    }
}
