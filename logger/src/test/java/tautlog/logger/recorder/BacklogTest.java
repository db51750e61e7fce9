package tautlog.logger.recorder;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import tautlog.calibration.CellCalibration;
import tautlog.detect.Finding;
import tautlog.detect.Finding.TroubleKind;
import tautlog.detect.Second;
import tautlog.recording.OutingStart;
import tautlog.sample.Calibration;
import tautlog.sample.HookupSource;
import tautlog.sample.Instrument;
import tautlog.sample.Tally;

@Timeout(10)
class BacklogTest {
    private static final OutingStart START = new OutingStart(
            new Instrument("TL-0001", 1, 0, 7, 1_000_000, 500_000, 8_388_607, 6),
            "schema = 1",
            CellCalibration.written(Calibration.of("0", "0.01")),
            "tautlogd test",
            OutingStart.Source.INSTRUMENT);

    @Test
    void givesEveryEventBackAsItCame() {
        // given
        Backlog backlog = new Backlog(Overflow.LOSE);
        WrittenEvents expected = new WrittenEvents();

        // when
        backlog.open(0);
        every(backlog);
        backlog.shut();
        every(expected);

        // then
        assertEquals(expected.lines(), drained(backlog));
    }

    private static void every(LiveEvents events) {
        events.begin(START, Optional.of(1_777_878_000_000_000L));
        events.hookup(Long.MAX_VALUE, "straight", HookupSource.SELECTOR);
        events.tension(-1, 0x1_2345_6789_abcdL, 3, new int[] {9, -8_388_608, 8_388_607, 9}, 1, 2);
        events.shaft(-5, 1L << 40, new long[] {Long.MIN_VALUE, -1, 7}, 2);
        events.input(1, 2, 3, 4, 5);
        events.mark(6, "the butt hit a stump");
        events.health(7, 4_987, -125, 0xffff_ffffL);
        events.clock(8, -9);
        events.tally(new Tally(Map.of("BAD_CRC", 2L), 3, 4, 5));
        events.finding(new Finding.Trouble(TroubleKind.GAP, 1, 2));
        events.second(new Second(0, 1, 2, 3, 4, 5, OptionalDouble.empty(), "straight", 0.5, 0));
        events.end();
    }

    @Test
    void keepsTheOrderOverManySegmentsWhileTheRecorderTakesThem() throws InterruptedException {
        // given
        Backlog backlog = new Backlog(Overflow.LOSE);
        WrittenEvents taken = new WrittenEvents();
        Thread recorder = new Thread(() -> {
            while (!backlog.isDrained()) {
                drainTo(backlog, taken);
            }
        });
        recorder.start();

        // when
        for (int k = 0; k < 50_000; k++) {
            backlog.open(k);
            backlog.tension(k, k, 0, new int[] {k}, 0, 1);
            backlog.shut();
        }
        backlog.close();
        recorder.join();

        // then
        assertEquals(50_000 - backlog.lostSamples(), taken.lines().size());
        assertEquals(0, backlog.lostSamples());
        for (int k = 0; k < 50_000; k++) {
            assertEquals(
                    "tension " + k + " " + k + " 0 [" + k + "]", taken.lines().get(k));
        }
    }

    @Test
    void holdsSixtySecondsOfTheFastestInstrumentBeforeItLosesASample() {
        // given: 4 kHz, each sample in a frame of its own, ten full shaft frames a second
        Instrument fastest = new Instrument("TL-0001", 1, 0, 7, 1_000_000, 4_000_000, 8_388_607, 6);
        Backlog backlog = new Backlog(Overflow.LOSE);
        backlog.open(0);
        backlog.begin(
                new OutingStart(
                        fastest, "schema = 1", START.calibration(), "tautlogd test", OutingStart.Source.INSTRUMENT),
                Optional.empty());

        // when
        for (int k = 0; k < 60 * 4_000; k++) {
            backlog.tension(k, k, 0, new int[] {k}, 0, 1);
            if (k % 400 == 0) {
                backlog.shaft(k, k, new long[60], 60);
            }
        }
        backlog.shut();

        // then
        assertEquals(0, backlog.lostSamples());
        assertEquals(0, backlog.lostEvents());
    }

    @Test
    void losesAndCountsWhatFindsNoRoomAndMarksTheGapWhenThereIsRoomAgain() {
        // given: room for one segment, full
        Backlog backlog = new Backlog(Overflow.LOSE, 1);
        backlog.open(0);
        long number = 0;
        while (backlog.lostSamples() == 0) {
            backlog.tension(number, number, 0, new int[10], 0, 10);
            number += 10;
        }

        // when: more comes, then the recorder takes all, then more
        backlog.tension(number, number, 0, new int[10], 0, 10);
        backlog.shaft(number, 1, new long[60], 60);
        Finding.Trouble finding = new Finding.Trouble(TroubleKind.GAP, 1, 2);
        backlog.finding(finding);
        backlog.shut();
        List<String> before = drained(backlog);
        backlog.open(1);
        backlog.tension(1_000_000, 1, 0, new int[] {5}, 0, 1);
        backlog.shut();

        // then
        assertEquals("finding " + finding, before.get(before.size() - 1), "findings always find room");
        assertEquals(20, backlog.lostSamples());
        assertEquals(1, backlog.lostEvents());
        assertEquals(
                List.of(
                        "mark 1000000 tautlogd: the disk stalled, lost before this: samples 20, other frames 1",
                        "tension 1000000 1 0 [5]"),
                drained(backlog));
    }

    @Test
    void marksWhatWasLostAtAnOutingsEndAndNothingInTheNext() {
        // given: room for one segment, full; the last samples of the outing are lost
        Backlog backlog = new Backlog(Overflow.LOSE, 1);
        backlog.open(0);
        backlog.begin(START, Optional.empty());
        long number = 100;
        while (backlog.lostSamples() == 0) {
            backlog.tension(number, number, 0, new int[10], 0, 10);
            number += 10;
        }
        backlog.end();
        backlog.shut();

        // when
        List<String> first = drained(backlog);
        backlog.open(1);
        backlog.begin(START, Optional.empty());
        backlog.tension(7, 1, 0, new int[] {5}, 0, 1);
        backlog.end();
        backlog.shut();

        // then: at the first sample that was lost
        long firstLost = number - 10;
        assertEquals(
                List.of(
                        "mark " + firstLost
                                + " tautlogd: the disk stalled, lost from here to the outing's end: samples 10, other frames 0",
                        "end"),
                first.subList(first.size() - 2, first.size()));
        assertEquals(List.of("begin " + START + " " + Optional.empty(), "tension 7 1 0 [5]", "end"), drained(backlog));
    }

    @Test
    void holdsUpAReplayedInstrumentInsteadOfLosingIt() throws InterruptedException {
        // given: a full backlog that waits
        Backlog backlog = new Backlog(Overflow.WAIT, 1);
        backlog.open(0);
        backlog.tension(0, 0, 0, new int[16_000], 0, 16_000);
        backlog.shut();
        CountDownLatch through = new CountDownLatch(1);
        Thread reader = new Thread(() -> {
            backlog.open(1);
            backlog.tension(16_000, 1, 0, new int[16_000], 0, 16_000);
            backlog.shut();
            through.countDown();
        });

        // when
        reader.start();
        boolean waited = !through.await(50, TimeUnit.MILLISECONDS);
        drained(backlog);
        boolean wentOn = through.await(5, TimeUnit.SECONDS);
        reader.join();

        // then
        assertTrue(waited);
        assertTrue(wentOn);
        assertEquals(0, backlog.lostSamples());
    }

    @Test
    void tellsWhenTheOldestEventCame() {
        // given
        Backlog backlog = new Backlog(Overflow.LOSE);
        boolean hadOne = backlog.oldestNanos().isPresent();

        // when
        backlog.open(41);
        backlog.end();
        backlog.shut();
        backlog.open(42);
        backlog.end();
        backlog.shut();

        // then
        assertFalse(hadOne);
        assertEquals(Optional.of(41L), backlog.oldestNanos());
        drained(backlog);
        assertEquals(Optional.empty(), backlog.oldestNanos());
    }

    private static List<String> drained(Backlog backlog) {
        WrittenEvents events = new WrittenEvents();
        drainTo(backlog, events);
        return events.lines();
    }

    private static void drainTo(Backlog backlog, LiveEvents events) {
        Optional<Segment> segment = backlog.take();
        while (segment.isPresent()) {
            Segment taken = segment.get();
            while (taken.replayNext(events)) {
                // into the list
            }
            backlog.recycle(taken);
            segment = backlog.take();
        }
    }
}
