package tautlog.logger.instrument.modbus;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
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
    private static final String INT32 = PLACE + "type = \"int32\"\nword_order = \"ABCD\"\n";
    private static final String FLOAT = PLACE + "type = \"float32\"\nword_order = \"ABCD\"\n";
    private static final byte[] SILENCE = {};

    private final ToldOuting told = new ToldOuting();
    private final List<Integer> sent = new CopyOnWriteArrayList<>();
    private Map<String, Long> faults = Map.of();

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
                INT32,
                asked -> number(asked, asked.index() * 7 - 300),
                () -> told.counts().size() >= 300);

        // then: the first ten were awaited
        List<Integer> stored = told.counts();
        assertEquals(sent.subList(10, 10 + stored.size()), stored);
        assertEquals(Map.of("UNPROVEN", 10L), faults);
    }

    private byte[] number(Asked to, int counts) {
        sent.add(counts);
        return IndependentSlave.registers(to, counts >> 24, counts >> 16, counts >> 8, counts);
    }

    @Test
    void readsEveryOrderOfWordsAsTheSpecificationNamesIt() throws Exception {
        for (String order : List.of("ABCD", "CDAB", "BADC", "DCBA")) {
            ToldOuting here = new ToldOuting();
            run(
                    FLOAT.replace("ABCD", order),
                    asked -> IndependentSlave.registers(asked, ordered(12.34f, order)),
                    () -> !here.counts().isEmpty(),
                    here);

            assertEquals(1_234, here.counts().get(0), order);
        }
    }

    private static int[] ordered(float value, String order) {
        byte[] bytes = ByteBuffer.allocate(4).putFloat(value).array();
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
        // given: of ten answers four are damaged, each in its way
        Random random = new Random(3);

        // when
        run(
                INT32,
                asked -> {
                    byte[] good = number(asked, random.nextInt(6_000));
                    return switch (asked.index() % 10) {
                        case 1 -> damaged(good, random);
                        case 3 -> Arrays.copyOf(good, good.length - 1 - random.nextInt(3));
                        case 5 -> IndependentSlave.exception(asked, 4);
                        case 7 -> IndependentSlave.framed(18, 3, 4, 0, 0, 0, 1);
                        case 9 -> IndependentSlave.framed(17, 3, 2, 0, 1);
                        default -> good;
                    };
                },
                () -> told.counts().size() >= 60);

        // then
        assertTrue(sent.containsAll(told.counts()));
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
        // given: every fourth answer comes after its time is up
        List<Integer> late = new CopyOnWriteArrayList<>();

        // when
        run(
                INT32,
                asked -> {
                    if (asked.index() % 4 == 3) {
                        late.add(asked.index());
                        pause(45);
                    }
                    return number(asked, asked.index());
                },
                () -> told.counts().size() >= 40);

        // then
        List<Integer> stored = new ArrayList<>(told.counts());
        stored.retainAll(late);
        assertEquals(List.of(), stored);
        assertTrue(faults.get("TIMEOUT") >= 10 && faults.get("UNASKED") >= 10, faults::toString);
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
                asked -> asked.index() >= 50 && asked.index() < 60 ? SILENCE : number(asked, asked.index()),
                () -> told.counts().size() >= 60);

        // then
        assertEquals(10L, faults.get("TIMEOUT"));
        assertEquals(sent.subList(10, 10 + told.counts().size()), told.counts());
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
