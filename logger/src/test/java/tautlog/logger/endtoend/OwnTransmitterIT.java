package tautlog.logger.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import tautlog.logger.LoggerFolder;
import tautlog.logger.instrument.modbus.IndependentSlave;
import tautlog.logger.instrument.modbus.IndependentSlave.Asked;
import tautlog.logger.pty.PseudoTerminal;

/** A Modbus transmitter on a pseudo-terminal, from its registers to the report: what it said was good, and nothing else. */
@Timeout(180)
class OwnTransmitterIT {
    /** Whole numbers of 0.01 kN in the order CDAB, polled faster than any such device converts (own.md: 80 a second). */
    private static final String UNPROVEN = """
            schema = 1
            rig = "rig.toml"
            recordings = "recordings"
            [instrument]
            kind = "modbus"
            port = "./port"
            baud = 115200
            unit_id = 17
            register = 107
            register_kind = "input"
            type = "int32"
            word_order = "CDAB"
            unit = "kN"
            decimals = 2
            poll_hz = 100.0
            timeout = "0.4 s"
            full_scale = 60.0
            """;

    /** 1234 is 0x04D2. */
    private static final String PROVEN = UNPROVEN + "word_order_proof = { reading = 12.34, bytes = \"04 D2 00 00\" }\n";

    private static final int PULL_FROM = 80;
    private static final int PULL_TO = 380;
    private static final int GREATEST_AT = 340;
    private static final int ASKED = 480;
    private static final int ABSURD_AT = 420;

    private final List<Integer> good = new CopyOnWriteArrayList<>();

    /** What the line carries; slack is one to five counts, the pull rises and falls, and is greatest where no answer fails. */
    private static int load(int poll) {
        if (poll == GREATEST_AT) {
            return 1_350;
        }
        return poll < PULL_FROM || poll >= PULL_TO ? 1 + poll % 5 : 1_000 + (poll * 37) % 300;
    }

    private byte[] answer(Asked asked) {
        int poll = asked.index();
        byte[] right = registers(asked, load(poll));
        switch (poll) {
            case 100, 101 -> {
                right[4] ^= 0x11;
                return right; // noise
            }
            case 120 -> {
                return Arrays.copyOf(right, 6); // its end is lost
            }
            case 140, 141, 142 -> {
                return new byte[0]; // it stops answering
            }
            case 160, 180 -> {
                pause(600);
                return right; // it answers when its time is up
            }
            case 200, 201 -> {
                return IndependentSlave.exception(asked, 6);
            }
            case 220 -> {
                return IndependentSlave.framed(18, 4, 4, 0x04, 0xd2, 0, 0);
            }
            case 240 -> {
                return IndependentSlave.framed(17, 4, 2, 0x04, 0xd2);
            }
            case 260 -> {
                return IndependentSlave.framed(17, 3, 4, 0x04, 0xd2, 0, 0);
            }
            case ABSURD_AT -> {
                return registers(asked, 0x7fff_ffff);
            }
            default -> {
                // the first ten, and those after an absurd one, are awaited
                if (poll >= 10 && (poll < ABSURD_AT || poll > ABSURD_AT + 10)) {
                    good.add(load(poll));
                }
                return right;
            }
        }
    }

    private static byte[] registers(Asked asked, int value) {
        return IndependentSlave.registers(asked, value >> 8, value, value >> 24, value >> 16);
    }

    private static void pause(long millis) {
        try {
            Thread.sleep(millis);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    @Test
    void storesWhatTheDeviceSaidWasGoodInOrderAndCountsTheRestByKind() throws Exception {
        // given
        BothPrograms programs = BothPrograms.in(Path.of("own-transmitter"), LoggerFolder.RIG, PROVEN);

        // when
        programs.recordAgainst(terminal -> {
            try (IndependentSlave slave = new IndependentSlave(terminal, this::answer)) {
                while (slave.asked().size() < ASKED) {
                    pause(10);
                }
                assertEquals("", slave.trouble());
            }
        });

        // then: the last answers may have met a line that was hung up
        List<Integer> stored = stored(programs);
        assertTrue(stored.size() >= good.size() - 2, stored.size() + " of " + good.size());
        assertEquals(good.subList(0, stored.size()), stored);

        JsonObject report = programs.report();
        Map<String, Integer> rejected = new TreeMap<>();
        report.getAsJsonObject("trust")
                .getAsJsonObject("rejected")
                .entrySet()
                .forEach(kind -> rejected.put(kind.getKey(), kind.getValue().getAsInt()));
        Map<String, Integer> expected = new TreeMap<>(Map.of(
                "BAD_CRC", 2,
                "TIMEOUT", 1 + 3 + 2,
                "UNASKED", 2,
                "EXCEPTION", 2,
                "WRONG_UNIT_ID", 1,
                "SHORT_REPLY", 1,
                "WRONG_FUNCTION", 1,
                "OUT_OF_RANGE", 1,
                "UNPROVEN", 20));
        assertEquals(expected, rejected);
        assertTrue(report.getAsJsonObject("trust").get("live_findings_agree").getAsBoolean());

        // and: 0.01 kN a count
        double told = 0;
        for (var pull : report.getAsJsonArray("pulls")) {
            told = Math.max(told, pull.getAsJsonObject().get("peak_n").getAsDouble());
        }
        assertEquals(13_500, told, 1e-6);
    }

    private static List<Integer> stored(BothPrograms programs) throws Exception {
        List<String> lines =
                programs.desk("export", "recordings", "--csv", "-").lines().toList();
        int counts = Arrays.asList(lines.get(0).split(",")).indexOf("counts");
        return lines.stream()
                .skip(1)
                .map(row -> Integer.valueOf(row.split(",")[counts]))
                .toList();
    }

    @Test
    void showsTheBytesThatProveTheOrderAndNoNumberBefore() throws Exception {
        // given
        BothPrograms programs = BothPrograms.in(Path.of("own-transmitter-unproven"), LoggerFolder.RIG, UNPROVEN);

        // when
        String shown;
        try (PseudoTerminal terminal = PseudoTerminal.open();
                IndependentSlave slave = new IndependentSlave(terminal, asked -> registers(asked, 1_234))) {
            terminal.linkAt(programs.path("port"));
            shown = programs.logger("listen", "--config", "logger.toml", "--seconds", "3");
            assertEquals("", slave.trouble());
        }

        // then
        String last = shown.lines().reduce("", (before, line) -> line);
        assertTrue(last.contains("UNPROVEN") && last.contains("bytes = \"04 D2 00 00\""), shown);
        assertTrue(!shown.contains("12.3"), shown);
    }
}
