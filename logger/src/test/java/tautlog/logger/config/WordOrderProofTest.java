package tautlog.logger.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import tautlog.config.Problem;

/** The one thing that tells in which order a transmitter sends: bytes beside a display. */
class WordOrderProofTest {
    private static final List<String> ORDERS = List.of("ABCD", "CDAB", "BADC", "DCBA");

    /** Letters as the specification of an order has them: which byte of the value comes first, second… */
    private static String sent(int bits, String order) {
        byte[] bytes = ByteBuffer.allocate(4).putInt(bits).array();
        return order.chars()
                .mapToObj(letter -> "%02X".formatted(bytes[letter - 'A']))
                .collect(Collectors.joining(" "));
    }

    private static List<Problem> problems(String type, String order, int decimals, String proof) {
        return InstrumentSettings.modbusProblems("""
                unit_id = 1
                register = 0
                register_kind = "holding"
                type = "%s"
                word_order = "%s"
                decimals = %d
                %s""".formatted(type, order, decimals, proof));
    }

    private static String proof(double reading, String bytes) {
        return String.format(Locale.ROOT, "word_order_proof = { reading = %.3f, bytes = \"%s\" }\n", reading, bytes);
    }

    /**
     * Devices in every order, whole numbers and floats, nearly slack and loaded, whose display was read a moment before: the
     * true order is taken wherever the load was worth the name, another never.
     */
    @Test
    void takesTheTrueOrderAndNeverAnother() {
        Random random = new Random(17);
        int taken = 0;
        int loaded = 0;
        for (int k = 0; k < 2_000; k++) {
            String type = k % 2 == 0 ? "int32" : "float32";
            String device = ORDERS.get(random.nextInt(4));
            boolean isLoaded = random.nextBoolean();
            int counts = isLoaded ? 1_000 + random.nextInt(59_000) : 1 + random.nextInt(300);
            counts = random.nextInt(8) == 0 ? -counts : counts;
            int bits = k % 2 == 0 ? counts : Float.floatToRawIntBits(counts / 1_000f);
            double display = counts / 1_000.0 * (1 + (random.nextDouble() - 0.5) * 0.1);
            for (String configured : ORDERS) {
                boolean isTaken = Math.abs(display) >= 0.001
                        && problems(type, configured, 3, proof(display, sent(bits, device)))
                                .isEmpty();
                assertTrue(!isTaken || configured.equals(device), configured + " for " + device + ", counts " + counts);
                taken += isTaken && isLoaded ? 1 : 0;
            }
            loaded += isLoaded ? 1 : 0;
        }
        assertTrue(taken > 0.85 * loaded, taken + " of " + loaded);
    }

    @Test
    void takesSwappedBytesOfOneRegisterOnlyWhenTheyAreProven() {
        for (String type : List.of("int16", "uint16")) {
            // 1234 is 0x04D2
            assertEquals(List.of(), problems(type, "BADC", 2, proof(12.34, "D2 04")));
            assertEquals(List.of(), problems(type, "ABCD", 2, proof(12.34, "04 D2")));
            assertEquals(1, problems(type, "BADC", 2, proof(12.34, "04 D2")).size());
            assertEquals(1, problems(type, "ABCD", 2, proof(12.34, "D2 04")).size());
        }
    }

    @Test
    void namesTheOrderThatFits() {
        List<Problem> problems = problems("int32", "ABCD", 2, proof(12.34, "00 00 D2 04"));

        assertEquals(
                List.of("instrument.word_order_proof"),
                problems.stream().map(Problem::key).toList());
        assertEquals(
                "its bytes read 537.64 in the order ABCD, not 12.34; they fit in the order BADC",
                problems.get(0).found());
    }

    @Test
    void refusesWhatProvesNothing() {
        assertTrue(refusal(proof(0, "00 00 00 00")).contains("zero is zero in every order"));
        assertTrue(refusal(proof(41.12, "00 00 10 10")).contains("another order reads nearly the same"));
        assertTrue(refusal(proof(99, "00 00 04 D2")).contains("they fit in no order"));
        assertTrue(refusal(proof(12.34, "00 00 04")).contains("are not 4 bytes"));
        assertTrue(refusal(proof(12.34, "a load")).contains("are no bytes"));
    }

    private static String refusal(String proof) {
        List<Problem> problems = problems("int32", "ABCD", 2, proof);
        assertEquals(1, problems.size(), problems::toString);
        return problems.get(0).found();
    }

    @Test
    void asksForItOnlyWhereTheSpecificationLeavesTheOrderOpen() {
        String place = "unit_id = 1\nregister = 0\nregister_kind = \"holding\"\n";
        for (String type : List.of("int16", "uint16")) {
            String one = place + "type = \"" + type + "\"\n";
            assertTrue(InstrumentSettings.modbus(one).isOrderKnown());
            assertTrue(
                    InstrumentSettings.modbus(one + "word_order = \"ABCD\"\n").isOrderKnown());
            assertTrue(
                    !InstrumentSettings.modbus(one + "word_order = \"BADC\"\n").isOrderKnown());
            assertTrue(
                    !InstrumentSettings.modbus(one + "word_order = \"DCBA\"\n").isOrderKnown());
        }
        assertTrue(!InstrumentSettings.modbus(place + "type = \"int32\"\nword_order = \"ABCD\"\n")
                .isOrderKnown());
    }
}
