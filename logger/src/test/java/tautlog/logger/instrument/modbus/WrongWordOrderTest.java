package tautlog.logger.instrument.modbus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tautlog.logger.config.InstrumentChoice;
import tautlog.logger.config.InstrumentSettings;
import tautlog.logger.instrument.ReadingOuting;
import tautlog.logger.instrument.ToldOuting;
import tautlog.logger.instrument.modbus.RegisterQuestion.Answer;

/**
 * Transmitters in all four orders of words and bytes behind all four configured ones; whole numbers of 0.001 kN in one register
 * or two and floats, on a line that is nearly slack, at exact zero, or pulled.
 */
class WrongWordOrderTest {
    private static final List<String> ORDERS = List.of("ABCD", "CDAB", "BADC", "DCBA");
    private static final List<String> LONG_TYPES = List.of("int32", "float32");
    private static final List<String> SHORT_TYPES = List.of("int16", "uint16");
    /** Of one register too these are not the specification's. */
    private static final List<String> SWAPPED = List.of("BADC", "DCBA");

    private static final int POLLS = 3_000;

    private final ToldOuting told = new ToldOuting();

    private ModbusFeed feed(String type, String order, String proof) {
        InstrumentChoice.Modbus choice = InstrumentSettings.modbus("""
                unit_id = 17
                register = 107
                register_kind = "holding"
                decimals = 3
                type = "%s"
                word_order = "%s"
                %s""".formatted(type, order, proof));
        return new ModbusFeed(choice.form(), choice.readings(), 115_200, new ReadingOuting(choice.readings(), 1, told));
    }

    private static boolean isShort(String type) {
        return SHORT_TYPES.contains(type);
    }

    /** What the device sends for {@code counts}; of one register the first two bytes. */
    private static int sent(String type, String order, int counts) {
        if (isShort(type)) {
            int sent = order.startsWith("A") || order.startsWith("C") ? counts : Short.reverseBytes((short) counts);
            return sent << 16;
        }
        int bits = type.equals("int32") ? counts : Float.floatToRawIntBits(counts / 1_000f);
        byte[] bytes = ByteBuffer.allocate(4).putInt(bits).array();
        int joined = 0;
        for (char letter : order.toCharArray()) {
            joined = joined << 8 | bytes[letter - 'A'] & 0xff;
        }
        return joined;
    }

    private static String proof(String type, String order) {
        String bytes = String.format(Locale.ROOT, "%08X", sent(type, order, 12_500))
                .replaceAll("(..)(?!$)", "$1 ")
                .substring(0, isShort(type) ? 5 : 11);
        return "word_order_proof = { reading = 12.5, bytes = \"" + bytes + "\" }\n";
    }

    /** Minutes of slack, exact zeros, noise of some counts, slow ramps and pulls. */
    private static List<Integer> trace(Random random) {
        List<Integer> counts = new ArrayList<>();
        while (counts.size() < POLLS) {
            int length = 20 + random.nextInt(200);
            int kind = random.nextInt(4);
            int from = kind == 3 ? random.nextInt(59_000) : random.nextInt(40);
            int to = kind == 3 ? random.nextInt(59_000) : random.nextInt(250);
            for (int i = 0; i < length; i++) {
                int load = from + (to - from) * i / length;
                counts.add(kind == 0 ? 0 : load + random.nextInt(9) - 4);
            }
        }
        return counts;
    }

    private static void answer(ModbusFeed feed, int poll, int bytes) {
        feed.take(poll * 20_000_000L, new Answer(bytes, Optional.empty()));
    }

    @Test
    void tellsNoNumberWhateverTheOrderUntilItIsProven() {
        for (String type : LONG_TYPES) {
            tellsNoNumber(type, ORDERS);
        }
        for (String type : SHORT_TYPES) {
            tellsNoNumber(type, SWAPPED);
        }
        assertTrue(feed("int32", "ABCD", "").unproven().isEmpty(), "nothing came");
    }

    private void tellsNoNumber(String type, List<String> orders) {
        for (String device : ORDERS) {
            for (String configured : orders) {
                ModbusFeed feed = feed(type, configured, "");
                int poll = 0;
                for (int counts : trace(new Random(5))) {
                    answer(feed, poll++, sent(type, device, counts));
                }
                assertEquals(List.of(), told.counts(), type + " " + configured + " for " + device);
                assertEquals((long) poll, feed.counts().tally().rejected().get("UNPROVEN"));
            }
        }
    }

    @Test
    void tellsOneRegisterInTheSpecificationsOrderWithoutAProof() {
        for (String type : SHORT_TYPES) {
            ModbusFeed feed = feed(type, "ABCD", "");
            for (int poll = 0; poll < 18; poll++) {
                answer(feed, poll, sent(type, "ABCD", 1 + poll % 8));
            }

            assertEquals(List.of(3, 4, 5, 6, 7, 8, 1, 2), told.counts(), type);
        }
    }

    @Test
    void saysWhichBytesCameAndWhatToDo() {
        // given
        ModbusFeed feed = feed("int32", "ABCD", "");

        // when
        answer(feed, 0, sent("int32", "BADC", 12_340));

        // then: 12340 is 0x3034
        String words = feed.unproven().orElseThrow();
        assertTrue(words.contains("word_order_proof = { reading = …, bytes = \"00 00 34 30\" }"), words);

        ModbusFeed one = feed("int16", "BADC", "");
        answer(one, 0, sent("int16", "BADC", 12_340));
        String ofOne = one.unproven().orElseThrow();
        assertTrue(ofOne.contains("word_order_proof = { reading = …, bytes = \"34 30\" }"), ofOne);
    }

    @Test
    void tellsEveryReadingOfAProvenOrderButTheFirstTenThatTellIt() {
        for (String type : List.of("int32", "float32", "int16")) {
            for (String order : ORDERS) {
                // given: zero is right in any order, what follows has to tell it
                ModbusFeed feed = feed(type, order, proof(type, order));
                List<Integer> trace = new ArrayList<>(List.of(0, 0, 0));
                for (int i = 0; i < 10; i++) {
                    trace.add(20_001 + i);
                }
                int most = isShort(type) ? Short.MAX_VALUE : Integer.MAX_VALUE;
                List<Integer> rest = trace(new Random(6)).stream()
                        .map(counts -> Math.min(counts, most))
                        .toList();
                trace.addAll(rest);

                // when
                int poll = 0;
                for (int counts : trace) {
                    answer(feed, poll++, sent(type, order, counts));
                }

                // then
                List<Integer> expected = new ArrayList<>(List.of(0, 0, 0));
                expected.addAll(rest);
                assertEquals(expected, told.counts(), type + " " + order);
                assertEquals(10L, feed.counts().tally().rejected().get("UNPROVEN"));
            }
        }
    }

    @Test
    void zerosEarnNoTrustInADeviceThatWasSetToAnotherOrderSince() {
        for (String configured : ORDERS) {
            for (String device : ORDERS) {
                if (!device.equals(configured)) {
                    // given: slack for a minute, all zeros; then floats of a pull
                    ModbusFeed feed = feed("float32", configured, proof("float32", configured));
                    int poll = 0;
                    Random random = new Random(7);
                    for (int i = 0; i < 3_000; i++) {
                        answer(feed, poll++, 0);
                    }

                    // when
                    for (int i = 0; i < 3_000; i++) {
                        answer(feed, poll++, sent("float32", device, 200 + random.nextInt(59_000)));
                    }

                    // then
                    assertTrue(told.counts().stream().allMatch(count -> count == 0), configured + " for " + device);
                }
            }
        }
    }

    @Test
    void takesNoZeroAfterAnAbsurdValueUntilTenTellThatTheDeviceIsWell() {
        // given
        ModbusFeed feed = feed("int32", "ABCD", proof("int32", "ABCD"));
        int poll = 0;
        for (int i = 0; i < 12; i++) {
            answer(feed, poll++, 100 + i);
        }

        // when
        answer(feed, poll++, Integer.MAX_VALUE);
        for (int i = 0; i < 50; i++) {
            answer(feed, poll++, i % 2 == 0 ? 0 : -1);
        }
        for (int i = 0; i < 12; i++) {
            answer(feed, poll++, 200 + i);
        }

        // then
        assertEquals(List.of(110, 111, 210, 211), told.counts());
    }
}
