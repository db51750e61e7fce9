package tautlog.logger.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.logger.wire.CReference.Build;
import tautlog.logger.wire.CReference.Output;
import tautlog.sample.Tally;

/**
 * The example main loop for a board, on the board made of arithmetic: what the logger understands of its ten seconds, and what
 * its lamps show. What happens when stands in {@code firmware-notes/reference/host_board.c}; the counter starts at 2³² − 4,000,000.
 */
class ReferenceExampleTest {
    private static final long START_TICK = (1L << 32) - 4_000_000;

    private static Output output;

    private final ToldText told = new ToldText();

    @BeforeAll
    static void run(@TempDir Path folder) throws IOException {
        output = CReference.compile(folder, Build.SANITIZED, "example", "host_board")
                .run(new byte[0]);
    }

    @BeforeEach
    void assemble() {
        OutingAssembler assembler = new OutingAssembler(told);
        new FrameDecoder().feed(output.bytes(), 0, output.bytes().length, assembler);
        assembler.end();
    }

    @Test
    void isOneOutingFromItsFirstSampleOn() {
        assertEquals(List.of("begin boot 7 tick " + START_TICK, "first " + START_TICK), told.only("begin", "first"));
    }

    /** Blocked for 0.15 s, 75 samples are lost; ten numbers are skipped; everything else joins on. */
    @Test
    void numbersItsSamplesSoThatGapsAreExactAndCountsWhatItLost() {
        List<String> gaps = new ArrayList<>();
        long next = 0;
        for (String line : told.only("tension")) {
            String[] words = line.split(" ");
            long number = Long.parseLong(words[1]);
            assertEquals(START_TICK + 2_000 * number, Long.parseLong(words[3]), line);
            if (number != next) {
                gaps.add(next + " to " + number);
            }
            next = number + line.split(",").length;
        }
        assertEquals(List.of("3000 to 3075", "3500 to 3510"), gaps);
        assertEquals(
                List.of("lost 0", "lost 0", "lost 0", "lost 0", "lost 0", "lost 75", "lost 85", "lost 85"),
                told.only("health").stream()
                        .map(line -> line.substring(line.indexOf("lost")))
                        .toList());
    }

    /** What the blocked line swallowed is seen by the sequence numbers: nothing was rejected, repeated or held in vain. */
    @Test
    void losesNoFrameUnseen() {
        int tension = 3;
        int shaft = 2;
        int helloAndHealth = 2; // INPUT comes at 6.35 s: its second began when the button was let go
        assertEquals(new Tally(Map.of(), tension + shaft + helloAndHealth, 0, 0), told.tally);
    }

    @Test
    void flagsTheEndStopAndTheOpenBridge() {
        List<String> flagged = told.only("tension").stream()
                .filter(line -> !line.contains("flags 0 "))
                .map(line -> line.replaceAll("tension (\\d+) .* flags (\\d+) .*", "$1 flags $2"))
                .toList();
        assertEquals(List.of("2250 flags 1", "2500 flags 2", "2525 flags 2", "2550 flags 2", "2575 flags 2"), flagged);
    }

    /** 54 pulses a second are 540 rpm with six pulses a turn. The first comes 1.0 s, the last before 8.0 s after the start. */
    @Test
    void tellsEveryPulseAtItsTick() {
        List<Long> pulses = new ArrayList<>();
        for (String line : told.only("shaft")) {
            for (String tick : line.replaceAll(".*\\[|]", "").split(", ")) {
                if (!tick.isEmpty()) {
                    pulses.add(Long.parseLong(tick));
                }
            }
        }
        List<Long> expected = new ArrayList<>();
        for (long micros = 1_000_000; micros < 8_000_000; micros += 18_518) {
            if (micros < 5_900_000 || micros > 6_100_000) { // two SHAFT frames were swallowed with their pulses
                expected.add(START_TICK + micros);
            }
        }
        assertEquals(expected, pulses);
    }

    @Test
    void debouncesSelectorAndMark() {
        assertEquals(List.of("selector 1 at 0", "selector 2 at 1525"), told.only("selector"));
        assertEquals(1, told.only("mark").size());
    }

    /** All for 2 s; fault until the first BEACON; what the logger says; fault 3 s after the last good one. */
    @Test
    void showsByItsLampsWhatThePageDemands() {
        assertEquals(
                List.of(
                        "100 clear caution over fault",
                        "2000000 fault",
                        "2500000 clear",
                        "3500000 caution",
                        "4500000 over",
                        "7500000 fault"),
                output.errors());
    }
}
