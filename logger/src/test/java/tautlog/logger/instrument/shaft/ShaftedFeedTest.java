package tautlog.logger.instrument.shaft;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tautlog.logger.config.InstrumentChoice;
import tautlog.logger.config.InstrumentSettings;
import tautlog.logger.instrument.ReadingOuting;
import tautlog.logger.instrument.ToldOuting;
import tautlog.logger.instrument.text.TextFeed;
import tautlog.logger.wire.FrameEncoder;
import tautlog.sample.Instrument;

class ShaftedFeedTest {
    private static final long MILLI = 1_000_000L;
    private static final long HZ = 32_768;
    private static final Instrument COUNTER = new Instrument("SHAFT-1", 1, 0, 9, HZ, 500_000, 8_388_607, 6);

    private final ToldOuting told = new ToldOuting();
    private final ShaftSource source = new ShaftSource(6);
    private final ShaftedFeed feed = new ShaftedFeed(source, told, joined -> {
        InstrumentChoice.Text text = InstrumentSettings.text("format = \"sign-value-unit\"\nlength = 11\n");
        ReadingOuting outing = new ReadingOuting(text.readings(), 1, joined);
        return new TextFeed(text.form(), text.readings().unit(), text.readings().decimals(), outing);
    });
    private final FrameEncoder encoder = new FrameEncoder();
    private final byte[] frame = new byte[FrameEncoder.LONGEST_FRAME];
    private int seq;

    private void hello(Instrument instrument, long tick, long arrives) {
        source.bytes(arrives, frame, encoder.hello(frame, 0, seq++ & 0xff, instrument, tick));
    }

    private void shaft(long tick, long pulses, int[] ages, long arrives) {
        source.bytes(arrives, frame, encoder.shaft(frame, 0, seq++ & 0xff, tick, pulses, ages, ages.length));
    }

    private void line(long nanos, String text) {
        byte[] bytes = text.getBytes(StandardCharsets.US_ASCII);
        feed.bytes(nanos, bytes, bytes.length);
    }

    private List<long[]> shafts() {
        List<long[]> frames = new ArrayList<>();
        for (String call : told.evidence()) {
            if (call.startsWith("shaft ")) {
                String[] words = call.replaceAll("[\\[\\],]", "").strip().split(" +");
                long[] numbers = new long[words.length - 1];
                for (int i = 1; i < words.length; i++) {
                    numbers[i - 1] = Long.parseLong(words[i]);
                }
                frames.add(numbers);
            }
        }
        return frames;
    }

    @Test
    void movesPulsesOntoTheOutingsTicksWhateverTheFramesDelay() {
        // given: the counter stood at 100,000 at 5 s of this computer's time; frames are 3 to 40 ms late; 54 pulses a
        // second
        Random random = new Random(4);
        long zero = 5_000 * MILLI;
        line(zero, "\r\n+  12.34 kN\r\n"); // the outing's tick 0
        hello(COUNTER, 100_000, zero + 3 * MILLI);
        long pulses = 0;

        // when: 60 s, ten frames a second
        for (int k = 1; k <= 600; k++) {
            long tick = 100_000 + k * HZ / 10;
            List<Integer> ages = new ArrayList<>();
            while ((pulses + 1) * HZ / 54 <= tick - 100_000) {
                pulses++;
                ages.add((int) (tick - 100_000 - pulses * HZ / 54));
            }
            long sent = zero + k * 100 * MILLI;
            shaft(
                    tick,
                    pulses,
                    ages.stream().mapToInt(Integer::intValue).toArray(),
                    sent + (3 + random.nextInt(38)) * MILLI);
            line(sent + 50 * MILLI, "+  12.34 kN\r\n");
        }

        // then: each pulse within 4 ms (least delay, and the drift that is allowed for) of its true time, in order
        assertEquals(6, told.instrument().orElseThrow().pulsesPerRevolution());
        long number = 0;
        long last = Long.MIN_VALUE;
        for (long[] shaft : shafts()) {
            for (int i = 2; i < shaft.length; i++) {
                number++;
                long due = number * 1_000_000 / 54;
                assertTrue(shaft[i] >= last, "in order");
                assertTrue(Math.abs(shaft[i] - due - 3_000) < 4_000, number + " at " + shaft[i] + ", due " + due);
                last = shaft[i];
            }
            assertEquals(number, shaft[1], "pulses");
        }
        assertTrue(number > 3_200, "pulses told: " + number);
        assertEquals(Map.of(), source.faults());
    }

    @Test
    void refusesASourceThatTellsAnotherNumberOfPulses() {
        // given
        line(0, "\r\n+  12.34 kN\r\n");
        hello(new Instrument("SHAFT-1", 1, 0, 9, HZ, 500_000, 8_388_607, 12), 1_000, MILLI);

        // when
        shaft(4_000, 0, new int[0], 90 * MILLI);
        line(100 * MILLI, "+  12.34 kN\r\n");

        // then
        assertEquals(List.of(), shafts());
        assertEquals(
                Map.of("SHAFT_OTHER_PULSES_PER_REVOLUTION", 1L),
                feed.counts().tally().rejected());
    }

    @Test
    void leavesOutAndCountsTheShaftOfASourceThatClaimsTheSameId() {
        // given: the indicator's id is TEXT
        line(0, "\r\n+  12.34 kN\r\n");
        hello(new Instrument("TEXT", 1, 0, 9, HZ, 500_000, 8_388_607, 6), 1_000, MILLI);

        // when
        shaft(4_000, 0, new int[0], 90 * MILLI);
        line(100 * MILLI, "+  12.34 kN\r\n");

        // then
        assertEquals(List.of(), shafts());
        assertEquals(Map.of("SHAFT_SAME_ID", 1L), feed.counts().tally().rejected());
    }

    @Test
    void countsWhatTheQueueCannotHoldAndWhatTheSecondLineDamages() {
        // given: nobody takes
        hello(COUNTER, 0, 0);

        // when
        for (int k = 1; k <= 305; k++) {
            shaft(k * HZ / 10, 0, new int[0], k * 100 * MILLI);
        }
        byte[] noise = {1, 2, 3, 0};
        source.bytes(40_000 * MILLI, noise, 4);

        // then
        assertEquals(5L, source.faults().get("SHAFT_QUEUE_FULL"));
        assertTrue(
                source.faults().keySet().stream().anyMatch(kind -> !kind.equals("SHAFT_QUEUE_FULL")),
                source.faults()::toString);
    }

    @Test
    void countsOnWhenTheSourceStartsAgainSoThatTheTrainShowsItsGap() {
        // given
        line(0, "\r\n+  12.34 kN\r\n");
        hello(COUNTER, 1_000, MILLI);
        shaft(4_000, 500, new int[] {10, 5}, 100 * MILLI);
        line(100 * MILLI, "+  12.34 kN\r\n");

        // when
        seq = 0;
        hello(new Instrument("SHAFT-1", 1, 0, 10, HZ, 500_000, 8_388_607, 6), 50, 2_000 * MILLI);
        shaft(3_000, 2, new int[] {10, 5}, 2_090 * MILLI);
        line(2_100 * MILLI, "+  12.34 kN\r\n");

        // then: 3 more, of which 2 are told
        assertEquals(
                List.of(500L, 503L),
                shafts().stream().map(numbers -> numbers[1]).toList());
    }
}
