package tautlog.logger.instrument.modbus;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import tautlog.logger.config.InstrumentChoice;
import tautlog.logger.config.InstrumentSettings;
import tautlog.logger.instrument.ReadingOuting;
import tautlog.logger.instrument.ToldOuting;
import tautlog.logger.instrument.modbus.IndependentSlave.Asked;
import tautlog.logger.port.InstrumentLine;
import tautlog.logger.port.SerialInstrumentPort;
import tautlog.logger.port.SerialSetting;
import tautlog.logger.pty.PseudoTerminal;

@Timeout(60)
class ModbusFeedTest {
    private static final String PLACE =
            "unit_id = 17\nregister = 107\nregister_kind = \"holding\"\ntimeout = \"0.03 s\"\npoll_hz = 200\n";
    private static final String INT32 = proven("int32", "ABCD");
    private static final String FLOAT = proven("float32", "ABCD");
    private static final byte[] SILENCE = {};

    private final ToldOuting told = new ToldOuting();
    private final List<Integer> good = new CopyOnWriteArrayList<>();
    private Map<String, Long> faults = Map.of();

    /** A device whose registers were read while its display showed 12.34. */
    private static String proven(String type, String order) {
        String bytes = Arrays.stream(type.equals("int32") ? ordered(1_234, order) : ordered(12.34f, order))
                .mapToObj("%02X"::formatted)
                .collect(Collectors.joining(" "));
        return unproven(type, order) + "word_order_proof = { reading = 12.34, bytes = \"" + bytes + "\" }\n";
    }

    private static String unproven(String type, String order) {
        return PLACE + "type = \"" + type + "\"\nword_order = \"" + order + "\"\n";
    }

    @Test
    void asksWithTheBytesOfTheSpecification() {
        // Modbus over Serial Line V1.02, frames with CRC-16/MODBUS, computed by an independent program
        assertRequest(
                "01 03 00 00 00 02 c4 0b",
                "unit_id = 1\nregister = 0\nregister_kind = \"holding\"\ntype = \"int32\"\nword_order = \"ABCD\"\n");
        assertRequest(
                "01 03 00 00 00 01 84 0a",
                "unit_id = 1\nregister = 0\nregister_kind = \"holding\"\ntype = \"int16\"\n");
    }

    private static void assertRequest(String hex, String keys) {
        assertArrayEquals(
                HexFormat.ofDelimiter(" ").parseHex(hex),
                new RegisterQuestion(InstrumentSettings.modbus(keys).form()).request());
    }

    @Test
    void understandsTheAnswersOfTheSpecification() {
        // the same source: a reply with registers 1234 ABCD, an exception 2
        RegisterQuestion question = new RegisterQuestion(InstrumentSettings.modbus(
                        "unit_id = 1\nregister = 0\nregister_kind = \"holding\"\ntype = \"int32\"\nword_order = \"ABCD\"\n")
                .form());

        assertEquals(0x1234abcd, answer(question, "01 03 04 12 34 ab cd 00 20").bytes());
        assertEquals(
                "Optional[EXCEPTION]",
                answer(question, "01 83 02 c0 f1").fault().toString());
        assertEquals(
                "Optional[BAD_CRC]", answer(question, "01 83 02 c0 f0").fault().toString());
    }

    private static RegisterQuestion.Answer answer(RegisterQuestion question, String hex) {
        byte[] bytes = HexFormat.ofDelimiter(" ").parseHex(hex);
        question.begin();
        return question.take(bytes, bytes.length).orElseThrow();
    }

    @Test
    void storesEveryAnswerInOrderAtTheDevicesPace() throws Exception {
        // when
        run(
                INT32.replace("0.03 s", "0.5 s"),
                asked -> number(asked, asked.index() * 7 - 299),
                () -> told.counts().size() >= 300);

        // then
        assertToldAllThatWasGood();
        assertEquals(Map.of("UNPROVEN", 10L), faults);
    }

    /** In order, none twice, none left out but the first ten, which are awaited, and what the test's end cut. */
    private void assertToldAllThatWasGood() {
        assertEquals(good.subList(10, 10 + told.counts().size()), told.counts());
    }

    /** A good answer. */
    private byte[] number(Asked to, int counts) {
        good.add(counts);
        return answer(to, counts);
    }

    private static byte[] answer(Asked to, int counts) {
        return IndependentSlave.registers(to, counts >> 24, counts >> 16, counts >> 8, counts);
    }

    @Test
    void readsEveryOrderOfWordsAsTheSpecificationNamesIt() throws Exception {
        for (String order : List.of("ABCD", "CDAB", "BADC", "DCBA")) {
            ToldOuting here = new ToldOuting();
            run(
                    proven("float32", order),
                    asked -> IndependentSlave.registers(asked, ordered(12.34f, order)),
                    () -> !here.counts().isEmpty(),
                    here);

            assertEquals(1_234, here.counts().get(0), order);
        }
    }

    private static int[] ordered(float value, String order) {
        return ordered(Float.floatToRawIntBits(value), order);
    }

    private static int[] ordered(int bits, String order) {
        byte[] bytes = ByteBuffer.allocate(4).putInt(bits).array();
        return order.chars().map(letter -> bytes[letter - 'A'] & 0xff).toArray();
    }

    @Test
    void givesNoNumberWhenTheOrderOfWordsIsWrong() throws Exception {
        for (String order : List.of("CDAB", "BADC", "DCBA")) {
            // given: a line that works, slack and pulls
            Random random = new Random(11);
            ToldOuting here = new ToldOuting();
            int[] answered = new int[1];

            // when
            run(
                    FLOAT,
                    asked -> {
                        answered[0]++;
                        return IndependentSlave.registers(asked, ordered(random.nextFloat() * 60, order));
                    },
                    () -> answered[0] >= 150,
                    here);

            // then
            assertEquals(List.of(), here.counts(), order);
            assertTrue(faults.get("OUT_OF_RANGE") > 75, faults::toString);
        }
    }

    @Test
    void givesNoWrongNumberOnANoisyLineAndCountsEachFaultByItsKind() throws Exception {
        // given: of ten answers five are damaged, each in its way; all carry numbers that are possible and never come
        // twice
        Random random = new Random(3);

        // when
        run(
                INT32.replace("0.03 s", "0.15 s"),
                asked -> {
                    int counts = 6 + asked.index() * 50 + random.nextInt(50);
                    return switch (asked.index() % 10) {
                        case 1 -> damaged(answer(asked, counts), random);
                        case 3 -> Arrays.copyOf(answer(asked, counts), 8 - random.nextInt(3));
                        case 5 -> IndependentSlave.exception(asked, 4);
                        case 7 -> IndependentSlave.framed(18, 3, 4, 0, 0, counts >> 8, counts);
                        case 9 -> IndependentSlave.framed(17, 3, 2, counts >> 8, counts);
                        default -> number(asked, counts);
                    };
                },
                () -> told.counts().size() >= 20);

        // then
        assertToldAllThatWasGood();
        for (String kind : List.of("BAD_CRC", "TIMEOUT", "EXCEPTION", "WRONG_UNIT_ID", "SHORT_REPLY")) {
            assertTrue(faults.getOrDefault(kind, 0L) >= 5, kind + " in " + faults);
        }
    }

    /** Another register byte, which only the checksum can tell. */
    private static byte[] damaged(byte[] frame, Random random) {
        frame[3 + random.nextInt(4)] ^= (byte) (1 + random.nextInt(255));
        return frame;
    }

    @Test
    void takesNoLateAnswerForTheNextQuestions() throws Exception {
        // when: every fourth answer comes after its time is up
        run(
                INT32.replace("0.03 s", "0.15 s"),
                asked -> {
                    int counts = 1_000 + asked.index();
                    if (asked.index() % 4 == 3) {
                        pause(220);
                        return answer(asked, counts);
                    }
                    return number(asked, counts);
                },
                () -> told.counts().size() >= 15);

        // then
        assertToldAllThatWasGood();
        assertTrue(faults.get("TIMEOUT") >= 7 && faults.get("UNASKED") >= 7, faults::toString);
    }

    private static void pause(long millis) {
        try {
            Thread.sleep(millis);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    @Test
    void countsADeviceThatStopsAnsweringAndGoesOnWhenItAnswersAgain() throws Exception {
        // when
        run(
                INT32.replace("0.03 s", "0.15 s"),
                asked -> asked.index() >= 50 && asked.index() < 60 ? SILENCE : number(asked, asked.index() + 1),
                () -> told.counts().size() >= 60);

        // then
        assertEquals(10L, faults.get("TIMEOUT"));
        assertToldAllThatWasGood();
    }

    @Test
    void leavesOutFloatsThatAreNoNumbersAndTakesAnOverloadCodeAsABound() throws Exception {
        run(
                FLOAT,
                asked -> IndependentSlave.registers(asked, 0x7f, 0xc0, 0, 0),
                () -> told.counts().isEmpty() && counted("NOT_FINITE") > 5);
        assertEquals(List.of(), told.counts());

        run(
                PLACE + "type = \"int16\"\noverload_code = 32767\n",
                asked -> IndependentSlave.registers(asked, 0x7f, 0xff),
                () -> told.counts().size() > 3);
        assertEquals(6_000, told.counts().get(0));
    }

    @Test
    @SuppressWarnings("try") // closed in the middle: that is the hang-up
    void doesNotHangWhenTheOtherEndHangsUpOrNeverReads() throws Exception {
        // given: nobody reads the terminal
        try (PseudoTerminal terminal = PseudoTerminal.open();
                InstrumentLine line = open(terminal)) {
            feed = feed(INT32, told);
            feed.opened(line);
            byte[] chunk = new byte[256];
            long until = System.nanoTime() + 300_000_000L;
            while (System.nanoTime() < until) {
                feed.bytes(System.nanoTime(), chunk, Math.max(0, line.read(chunk)));
            }

            // when
            terminal.close();
            int n = 0;
            while (n != InstrumentLine.GONE) {
                n = line.read(chunk);
            }
            line.close();
            feed.gone();

            // then
            feed.end();
            assertTrue(counted("TIMEOUT") > 1);
            assertTrue(pollersEnd(), "the poller ends");
        }
    }

    private static boolean pollersEnd() throws InterruptedException {
        for (Thread thread : Thread.getAllStackTraces().keySet()) {
            if (thread.getName().equals("poller")) {
                thread.join(2_000);
                if (thread.isAlive()) {
                    return false;
                }
            }
        }
        return true;
    }

    private ModbusFeed feed = feed(INT32, told);

    private long counted(String kind) {
        return feed.counts().tally().rejected().getOrDefault(kind, 0L);
    }

    private static ModbusFeed feed(String keys, ToldOuting to) {
        InstrumentChoice.Modbus choice = InstrumentSettings.modbus(keys);
        return new ModbusFeed(choice.form(), choice.readings(), 115_200, new ReadingOuting(choice.readings(), 1, to));
    }

    private static InstrumentLine open(PseudoTerminal terminal) throws Exception {
        return new SerialInstrumentPort(
                        new SerialSetting(terminal.portName(), 115_200, 8, SerialSetting.Parity.EVEN, 1))
                .open();
    }

    private void run(String keys, Function<Asked, byte[]> answers, BooleanSupplier enough) throws Exception {
        run(keys, answers, enough, told);
    }

    /** Reads as the reader thread does, until {@code enough}. */
    private void run(String keys, Function<Asked, byte[]> answers, BooleanSupplier enough, ToldOuting to)
            throws Exception {
        PseudoTerminal terminal = PseudoTerminal.open();
        try (IndependentSlave slave = new IndependentSlave(terminal, answers)) {
            InstrumentLine line = open(terminal);
            feed = feed(keys, to);
            feed.opened(line);
            byte[] chunk = new byte[256];
            while (!enough.getAsBoolean()) {
                feed.bytes(System.nanoTime(), chunk, Math.max(0, line.read(chunk)));
            }
            line.close();
            feed.gone();
            faults = feed.counts().tally().rejected();
            assertEquals("", slave.trouble());
        }
    }
}
