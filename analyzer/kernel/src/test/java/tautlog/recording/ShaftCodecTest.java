package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import tautlog.fixtures.EvidenceLog;

class ShaftCodecTest {
    private static ShaftTable random(Random random, int frames) {
        ShaftTable table = new ShaftTable();
        long tick = random.nextLong() >> 20;
        long pulses = random.nextInt(1_000_000);
        int samplesBefore = 0;
        for (int f = 0; f < frames; f++) {
            long[] ticks = new long[3 + random.nextInt(random.nextInt(10) == 0 ? 200 : 7)];
            for (int i = 0; i < ticks.length; i++) {
                ticks[i] = tick - (ticks.length - i) * 18_519L + random.nextInt(100);
            }
            int n = ticks.length - 3;
            pulses += n + (random.nextInt(20) == 0 ? random.nextInt(90) : 0);
            table.add(tick, pulses, samplesBefore, ticks, 3, n);
            tick += random.nextInt(50) == 0 ? random.nextLong() >>> 24 : 50_000 + random.nextInt(9);
            samplesBefore += random.nextInt(3);
        }
        return table;
    }

    private static byte[] content(ShaftTable table) {
        ByteWriter content = new ByteWriter();
        new ShaftCodec().encode(table, content);
        return content.toBytes();
    }

    private static Block block(byte[] content, int length, int count) {
        ByteWriter bytes = new ByteWriter();
        bytes.raw(content, 0, length);
        return Block.of(Block.Kind.SHAFT, 0, 1, 0, count, bytes);
    }

    private static void assertSame(ShaftTable expected, ShaftTable actual) {
        int n = expected.frames;
        assertEquals(n, actual.frames);
        assertArrayEquals(Arrays.copyOf(expected.tick, n), Arrays.copyOf(actual.tick, n));
        assertArrayEquals(Arrays.copyOf(expected.pulses, n), Arrays.copyOf(actual.pulses, n));
        assertArrayEquals(Arrays.copyOf(expected.samplesBefore, n), Arrays.copyOf(actual.samplesBefore, n));
        assertArrayEquals(Arrays.copyOf(expected.from, n + 1), Arrays.copyOf(actual.from, n + 1));
        int pulses = expected.pulseTicks();
        assertArrayEquals(Arrays.copyOf(expected.pulseTick, pulses), Arrays.copyOf(actual.pulseTick, pulses));
    }

    /** Refused with nothing left of it, or taken and told to the last frame. */
    private static boolean isRefused(Block block) {
        Span span = new Span(0, 1);
        EvidenceLog log = new EvidenceLog();
        boolean refused = false;
        try {
            new SpanCodec().append(block, span);
        } catch (DamagedBlockException e) {
            assertTrue(String.valueOf(e.getMessage()).contains("content"), e.toString());
            refused = true;
        }
        new SpanOrder(span.shaft, List.of()).tellRest(log);
        assertEquals(refused ? 0 : block.count(), log.lines().size());
        return refused;
    }

    @Property(tries = 200)
    void givesBackWhatItWasGiven(@ForAll long seed, @ForAll @IntRange(min = 1, max = 300) int frames)
            throws DamagedBlockException {
        ShaftTable table = random(new Random(seed), frames);
        byte[] content = content(table);
        Span span = new Span(0, 1);

        new SpanCodec().append(block(content, content.length, frames), span);

        assertSame(table, span.shaft);
    }

    @Property(tries = 30)
    void refusesAContentCutAtAnyByteWhole(@ForAll long seed) {
        Random random = new Random(seed);
        ShaftTable table = random(random, 1 + random.nextInt(40));
        byte[] content = content(table);

        for (int length = 0; length < content.length; length++) {
            assertTrue(isRefused(block(content, length, table.frames)), "cut at " + length + " of " + content.length);
        }
    }

    @Property(tries = 500)
    void leavesNothingOfARefusedContent(@ForAll long seed) {
        Random random = new Random(seed);
        ShaftTable table = random(random, 1 + random.nextInt(200));
        byte[] content = content(table);
        for (int flips = 1 + random.nextInt(3); flips > 0; flips--) {
            content[random.nextInt(content.length)] ^= (byte) (1 << random.nextInt(8));
        }
        int length = random.nextInt(3) == 0 ? random.nextInt(content.length + 1) : content.length;

        isRefused(block(content, length, table.frames));
    }

    /** The rest of the tail is told as it was before. */
    @Test
    void keepsWhatTheSpanHeldBeforeARefusedBlock() throws DamagedBlockException {
        ShaftTable table = random(new Random(1), 20);
        byte[] content = content(table);
        Span span = new Span(0, 1);
        SpanCodec codec = new SpanCodec();
        codec.append(block(content, content.length, 20), span);

        assertThrows(DamagedBlockException.class, () -> codec.append(block(content, content.length - 1, 20), span));

        assertSame(table, span.shaft);
    }

    @Test
    void refusesABlockOfNoFrame() {
        assertTrue(isRefused(block(new byte[] {0}, 1, 0)));
    }
}
