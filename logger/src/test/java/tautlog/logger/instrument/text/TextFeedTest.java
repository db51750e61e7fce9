package tautlog.logger.instrument.text;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tautlog.logger.config.InstrumentChoice;
import tautlog.logger.config.InstrumentSettings;
import tautlog.logger.instrument.ReadingOuting;
import tautlog.logger.instrument.ToldOuting;
import tautlog.logger.port.InstrumentLine;

class TextFeedTest {
    private static final String PLAIN = "format = \"sign-value-unit\"\nlength = 11\n";
    private static final String STATUS = "format = \"status-kind-value-unit\"\nlength = 17\n";
    private static final String SUMMED = "format = \"sign-value-unit-checksum\"\nlength = 14\nchecksum = \"xor\"\n";

    private final ToldOuting told = new ToldOuting();
    private long nanos;

    private TextFeed feed(String keys) {
        InstrumentChoice.Text text = InstrumentSettings.text(keys);
        ReadingOuting outing = new ReadingOuting(text.readings(), 1, told);
        return new TextFeed(text.form(), text.readings().unit(), text.readings().decimals(), outing);
    }

    private void send(TextFeed feed, String text) {
        byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);
        nanos += 100_000_000L;
        feed.bytes(nanos, bytes, bytes.length);
    }

    private static Map<String, Long> faults(TextFeed feed) {
        return feed.counts().tally().rejected();
    }

    @Test
    void readsTheDisplayedNumberAsCounts() {
        // given
        TextFeed feed = feed(PLAIN);

        // when
        send(feed, "\r\n+  12.34 kN\r\n-   1.20 kN\r\n    0.00 kN\r\n+  59,99 KN\r\n");

        // then
        assertEquals(List.of(1_234, -120, 0, 5_999), told.counts());
        assertEquals(Map.of(), faults(feed));
    }

    @Test
    void takesNoLineThatWasBegunBeforeALineEndWasHeard() {
        // given: the port opens in the middle of +  52.34 kN
        TextFeed feed = feed(PLAIN.replace("11", "\"varies\""));

        // when
        send(feed, "2.34 kN\r\n+  52.34 kN\r\n");
        feed.gone();
        feed.opened(unread());
        send(feed, "1.11 kN\r\n+  52.35 kN\r\n");

        // then
        assertEquals(List.of(5_234, 5_235), told.counts());
    }

    private static InstrumentLine unread() {
        return new InstrumentLine() {
            @Override
            public int read(byte[] into) {
                return GONE;
            }

            @Override
            public void write(byte[] bytes, int n) {}

            @Override
            public void close() {}
        };
    }

    @Test
    void countsWhatFailsByTheFirstTestThatItFailed() {
        // given
        TextFeed feed = feed(PLAIN);

        // when
        send(feed, "\r\n");
        send(feed, "+  12.34 kg\r\n"); // another unit
        send(feed, "+  12.34   \r\n"); // none
        send(feed, "+  123.4 kN\r\n"); // the point has moved
        send(feed, "+  12345 kN\r\n"); // or was lost
        send(feed, "+  1.34 kN\r\n"); // a digit was lost
        send(feed, "+  1x.34 kN\r\n");
        send(feed, "+  12\r34 kN\r\n"); // a lone end of line
        send(feed, "+  12.\u00b34 kN\r\n"); // beyond ASCII
        send(feed, "+  99.99 kN\r\n"); // beyond 60 kN
        send(feed, "x".repeat(129) + "\r\n");
        send(feed, "+  12.34 kN".repeat(1_000) + "\r\n");
        send(feed, "+  12.34 kN\r\n"); // and a good one

        // then
        assertEquals(List.of(1_234), told.counts());
        assertEquals(
                Map.of(
                        "WRONG_UNIT",
                        2L,
                        "BAD_NUMBER",
                        2L,
                        "WRONG_LENGTH",
                        1L,
                        "UNKNOWN_LINE",
                        3L,
                        "OUT_OF_RANGE",
                        1L,
                        "TOO_LONG",
                        2L),
                faults(feed));
    }

    @Test
    void takesAWordForOverloadAsAtLeastFullScale() {
        // given
        TextFeed feed = feed(PLAIN);

        // when
        send(feed, "\r\n         OL\r\n--------   \r\n^^^^^^^^ kN\r\n        -OL\r\n");

        // then
        assertEquals(List.of(6_000, 6_000, 6_000, -6_001), told.counts());
        assertTrue(told.evidence().stream().allMatch(line -> line.split(" ")[3].equals("1")));
    }

    @Test
    void readsStatusAndKindAndLeavesOutNetReadings() {
        // given
        TextFeed feed = feed(STATUS);

        // when: stable, in motion (every shock is), net, overload with and without a number
        send(feed, "\r\nST,GS,+  12.34 kN\r\nUS,GS,-   0.10 kN\r\nST,NT,+  12.34 kN\r\n");
        send(feed, "OL,GS,+  61.00 kN\r\nOL,GS,+        kN\r\nST,GS,+        kN\r\n");

        // then
        assertEquals(List.of(1_234, -10, 6_000, 6_000), told.counts());
        assertEquals(Map.of("NET_READING", 1L, "BAD_NUMBER", 1L), faults(feed));
    }

    @Test
    void findsTheSameReadingsHoweverTheBytesAreSplit() {
        String text = "junk\r\n+  12.34 kN\r\n+  12.35 kN\r\n+  1";
        for (int split = 0; split <= text.length(); split++) {
            ToldOuting here = new ToldOuting();
            InstrumentChoice.Text settings = InstrumentSettings.text(PLAIN);
            TextFeed feed = new TextFeed(
                    settings.form(),
                    settings.readings().unit(),
                    settings.readings().decimals(),
                    new ReadingOuting(settings.readings(), 1, here));

            byte[] bytes = text.getBytes(StandardCharsets.US_ASCII);
            feed.bytes(1, bytes, split);
            feed.bytes(2, text.substring(split).getBytes(StandardCharsets.US_ASCII), bytes.length - split);

            assertEquals(List.of(1_234, 1_235), here.counts(), "split at " + split);
        }
    }

    @Test
    void takesTheChecksumThatALineHas() {
        // given
        TextFeed feed = feed(SUMMED);

        // when
        send(feed, "\r\n" + summed("+  12.34 kN") + "\r\n+  92.34 kN*3D\r\n");

        // then
        assertEquals(List.of(1_234), told.counts());
        assertEquals(Map.of("BAD_CHECKSUM", 1L), faults(feed));
    }

    /** Exclusive or over all characters before the two digits, the star included; written here once more. */
    private static String summed(String line) {
        int sum = 0;
        for (char c : (line + "*").toCharArray()) {
            sum ^= c;
        }
        return line + "*" + String.format("%02X", sum);
    }

    @Test
    void givesNoWrongNumberWhenAnyByteOfASummedLineIsAnother() {
        // given
        Random random = new Random(5);
        TextFeed feed = feed(SUMMED);
        send(feed, "\r\n");
        List<Integer> sent = new ArrayList<>();
        long damaged = 0;

        // when: one byte in every second line is any other
        for (int i = 0; i < 4_000; i++) {
            int counts = random.nextInt(6_000);
            byte[] line =
                    (summed(String.format("+%7.2f kN", counts / 100.0)) + "\r\n").getBytes(StandardCharsets.US_ASCII);
            if (i % 2 == 0) {
                line[random.nextInt(line.length - 2)] ^= (byte) (1 + random.nextInt(255));
                damaged++;
            } else {
                sent.add(counts);
            }
            feed.bytes(nanos += 1_000_000, line, line.length);
        }

        // then
        assertEquals(sent, told.counts());
        assertEquals(damaged, feed.counts().tally().rejectedFrames());
    }

    @Test
    void givesNoWrongNumberWhenBytesAreLostAddedOrNoDigits() {
        // given: every damage that leaves no well-formed line of the right length; another digit in place of one cannot
        // be told
        Random random = new Random(6);
        TextFeed feed = feed(PLAIN);
        send(feed, "\r\n");
        List<Integer> sent = new ArrayList<>();

        // when
        for (int i = 0; i < 20_000; i++) {
            int counts = random.nextInt(6_000);
            StringBuilder line = new StringBuilder(String.format("+%7.2f kN\r\n", counts / 100.0));
            int at = random.nextInt(line.length() - 2);
            int kind = random.nextInt(6);
            if (kind == 0) {
                line.deleteCharAt(at);
            } else if (kind == 1) {
                line.insert(at, (char) (random.nextInt(256)));
            } else if (kind == 2) {
                line.setCharAt(3 + random.nextInt(8), (char) (128 + random.nextInt(128)));
            } else if (kind == 3) {
                line.delete(at, line.length() - 2);
            } else if (kind == 4) {
                line.setCharAt(random.nextInt(11), random.nextBoolean() ? '\r' : '\n');
            } else {
                sent.add(counts);
            }
            byte[] bytes = line.toString().getBytes(StandardCharsets.ISO_8859_1);
            feed.bytes(nanos += 1_000_000, bytes, bytes.length);
        }

        // then
        assertEquals(sent, told.counts());
        assertTrue(feed.counts().tally().rejectedFrames() > 10_000, faults(feed)::toString);
    }

    @Test
    void stopsAPatternThatWouldTryForEver() {
        // given: nested repetition, which takes 2 to the 100 steps on this line
        TextFeed feed = feed("pattern = '(?<value>([0-9]+)+)x'\nlength = \"varies\"\n");

        // when
        assertTimeoutPreemptively(Duration.ofSeconds(5), () -> {
            for (int i = 0; i < 100; i++) {
                send(feed, "\r\n" + "1".repeat(100) + "\r\n");
            }
        });

        // then
        assertEquals(100L, faults(feed).get("UNKNOWN_LINE"));
    }

    @Test
    void takesAPatternOfTheOwnersOwn() {
        // given: STX, a letter for the state, seven digits without a point, ETX and a lone carriage return
        TextFeed feed = feed("pattern = '\\x02(?:(?<net>N)|G)(?<stable>S| )(?<value>[0-9]{7})\\x03'\nlength = 11\n"
                + "line_end = \"cr\"\ndecimals = 0\nfull_scale = 1000\n");

        // when
        send(feed, "\r\u0002GS0000123\u0003\r\u0002N 0000123\u0003\r");

        // then
        assertEquals(List.of(123), told.counts());
        assertEquals(Map.of("NET_READING", 1L), faults(feed));
    }
}
