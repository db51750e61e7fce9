package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class SampleCodecTest {
    private static SampleBlock coded(FrameTable table) throws DamagedBlockException {
        return read(new SampleCodec().encode(0, 1, table));
    }

    static SampleBlock read(Block block) throws DamagedBlockException {
        SampleBlock decoded = new SampleBlock();
        new SpanCodec().read(Block.read(block.bytes(), 0), decoded);
        return decoded;
    }

    static ByteWriter content(Block block) {
        ByteReader in = block.content();
        ByteWriter content = new ByteWriter();
        content.raw(in.array(), in.at(), in.left());
        return content;
    }

    static FrameTable random(Random random, int frames, int spreadBits, int longest) {
        FrameTable table = new FrameTable();
        long number = random.nextInt(1_000) * (random.nextInt(4) == 0 ? 4_294_967_296L : 1);
        long tick = random.nextLong() >> 20;
        for (int f = 0; f < frames; f++) {
            int n = 1 + random.nextInt(longest);
            int[] counts = new int[n + 3];
            int base = random.nextInt() >> random.nextInt(32);
            int ramp = random.nextInt() >> (10 + random.nextInt(22));
            for (int i = 0; i < counts.length; i++) {
                counts[i] = base + ramp * i + (spreadBits == 0 ? 0 : random.nextInt() >>> (32 - spreadBits));
            }
            number += random.nextInt(8) == 0 ? random.nextInt(1_000_000) : 0;
            table.add(number, tick, random.nextInt(10) == 0 ? random.nextInt(256) : 0, counts, 3, n);
            number += n;
            tick += random.nextInt(50) == 0 ? random.nextLong() >>> 20 : n * 2_000L + random.nextInt(9) - 4;
        }
        return table;
    }

    static void assertSame(FrameTable expected, SampleBlock block) {
        FrameTable actual = block.table;
        int n = expected.frames;
        assertEquals(n, actual.frames);
        assertArrayEquals(Arrays.copyOf(expected.number, n), Arrays.copyOf(actual.number, n));
        assertArrayEquals(Arrays.copyOf(expected.tick, n), Arrays.copyOf(actual.tick, n));
        assertArrayEquals(Arrays.copyOf(expected.flags, n), Arrays.copyOf(actual.flags, n));
        assertArrayEquals(Arrays.copyOf(expected.from, n + 1), Arrays.copyOf(actual.from, n + 1));
        int samples = expected.samples();
        assertArrayEquals(Arrays.copyOf(expected.counts, samples), Arrays.copyOf(block.counts(), samples));
    }

    /** Every run: at most 128 samples of consecutive numbers and equal flags, with the least and greatest it says. */
    static void assertRunsTell(FrameTable table, SampleBlock block) {
        long[] numberOf = new long[table.samples()];
        int[] flagsOf = new int[table.samples()];
        for (int f = 0; f < table.frames; f++) {
            for (int i = table.from[f]; i < table.from[f + 1]; i++) {
                numberOf[i] = table.number[f] + i - table.from[f];
                flagsOf[i] = table.flags[f];
            }
        }
        int next = 0;
        for (int run = 0; run < block.runs(); run++) {
            assertEquals(next, block.runFrom(run));
            assertTrue(block.runLength(run) >= 1 && block.runLength(run) <= 128);
            int least = Integer.MAX_VALUE;
            int greatest = Integer.MIN_VALUE;
            for (int i = next; i < next + block.runLength(run); i++) {
                assertEquals(block.runNumber(run) + i - next, numberOf[i]);
                assertEquals(block.runFlags(run), flagsOf[i]);
                least = Math.min(least, table.counts[i]);
                greatest = Math.max(greatest, table.counts[i]);
            }
            assertEquals(least, block.run(run).least());
            assertEquals(greatest, block.run(run).greatest());
            next += block.runLength(run);
        }
        assertEquals(table.samples(), next);
    }

    @Property(tries = 400)
    void givesBackWhatItWasGiven(
            @ForAll long seed, @ForAll @IntRange(min = 1, max = 60) int frames, @ForAll @IntRange(max = 32) int bits)
            throws DamagedBlockException {
        FrameTable table = random(new Random(seed), frames, bits, 90);
        SampleBlock block = coded(table);
        assertRunsTell(table, block);
        assertSame(table, block);
    }

    @Property(tries = 30)
    void givesBackLongStretchesInEveryWidth(@ForAll long seed) throws DamagedBlockException {
        Random random = new Random(seed);
        for (int bits = 0; bits <= 32; bits++) {
            int[] counts = new int[700 + random.nextInt(128)];
            int base = random.nextInt();
            int slope = random.nextInt(3) * random.nextInt(5_000);
            for (int i = 0; i < counts.length; i++) {
                counts[i] = base + slope * i + (bits == 0 ? 0 : random.nextInt() >>> (32 - bits));
            }
            FrameTable table = new FrameTable();
            table.add(5, 6, 0, counts, 0, counts.length);
            SampleBlock block = coded(table);
            assertRunsTell(table, block);
            assertSame(table, block);
        }
    }

    @Test
    void givesBackTheGreatestAndLeastIntsSideBySide() throws DamagedBlockException {
        int[] counts = new int[300];
        for (int i = 0; i < counts.length; i++) {
            counts[i] = i % 2 == 0 ? Integer.MIN_VALUE : Integer.MAX_VALUE;
        }
        FrameTable table = new FrameTable();
        table.add(0, 0, 0, counts, 0, 300);
        assertSame(table, coded(table));
    }

    /** Even frames of a steady line cost next to nothing beside the counts. */
    @Test
    void spendsNearlyNothingOnSteadyFrames() {
        FrameTable table = new FrameTable();
        for (int f = 0; f < 655; f++) {
            table.add(500 + 25L * f, 1_000_000 + 50_000L * f, 0, new int[25], 0, 25);
        }
        ByteWriter content = content(new SampleCodec().encode(0, 1, table));
        int runs = (655 * 25 + 127) / 128;
        assertTrue(content.size() < 3 * runs + 100, content.size() + " bytes");
    }

    @Property(tries = 300)
    void neverReadsOutsideItsBytes(@ForAll long seed) {
        Random random = new Random(seed);
        FrameTable table = random(random, 10, random.nextInt(33), 40);
        byte[] bytes = content(new SampleCodec().encode(0, 1, table)).toBytes();
        for (int flips = 0; flips < 3; flips++) {
            bytes[random.nextInt(bytes.length)] = (byte) random.nextInt();
        }
        ByteWriter damaged = new ByteWriter();
        damaged.raw(bytes, 0, random.nextInt(bytes.length + 1));
        Block block = Block.of(Block.Kind.SAMPLES, 0, 1, table.number[0], table.samples(), damaged);
        SampleBlock into = new SampleBlock();
        try {
            new SpanCodec().read(block, into);
            assertEquals(table.samples(), into.counts().length >= table.samples() ? table.samples() : -1);
        } catch (DamagedBlockException e) {
            assertTrue(String.valueOf(e.getMessage()).contains("content"));
            assertEquals(0, into.frames() + into.runs(), "nothing is left of a refused block");
        }
    }

    /** Bounds are no part of the chain: who changes them alone would hide a peak from a reader that looks at them only. */
    @Test
    void refusesRunsWhoseBoundsAreNotThoseOfTheirCounts() throws DamagedBlockException {
        FrameTable table = random(new Random(3), 8, 5, 60);
        ByteWriter content = content(new SampleCodec().encode(0, 1, table));
        int otherBoundsAlone = 0;
        for (int at = 0; at < content.size(); at++) {
            ByteWriter changed = new ByteWriter();
            changed.raw(content.array(), 0, content.size());
            changed.array()[at] ^= 1;
            Block block = Block.of(Block.Kind.SAMPLES, 0, 1, table.number[0], table.samples(), changed);
            if (tellsOtherBoundsAlone(table, block)) {
                otherBoundsAlone++;
                assertThrows(DamagedBlockException.class, () -> new SpanCodec().append(block, new Span(0, 1)));
            }
        }
        assertTrue(otherBoundsAlone > 0);
    }

    static boolean tellsOtherBoundsAlone(FrameTable table, Block block) {
        SampleBlock into = new SampleBlock();
        try {
            new SpanCodec().read(block, into);
            assertSame(table, into);
        } catch (DamagedBlockException | AssertionError e) {
            return false;
        }
        try {
            assertRunsTell(table, into);
            return false;
        } catch (AssertionError e) {
            return true;
        }
    }

    /** A block that says it holds no sample has no first number: whoever asks for that would be told of another block. */
    /** As an instrument sends them: all frames of one length, a gap or another flag now and then, or never. */
    @Property(tries = 200)
    void givesBackEvenFrames(@ForAll long seed) throws DamagedBlockException {
        Random random = new Random(seed);
        int n = 1 + random.nextInt(60);
        int gapIn = random.nextBoolean() ? 1_000_000 : 1 + random.nextInt(40);
        int flagIn = random.nextBoolean() ? 1_000_000 : 1 + random.nextInt(40);
        FrameTable table = new FrameTable();
        long number = random.nextInt(1_000);
        int[] counts = new int[n];
        int frames = 1 + random.nextInt(300);
        for (int frame = 0; frame < frames; frame++) {
            Arrays.setAll(counts, i -> random.nextInt(17));
            table.add(number, number * 2_000, random.nextInt(flagIn) == 0 ? 2 : 0, counts, 0, n);
            number += n + (random.nextInt(gapIn) == 0 ? 1 + random.nextInt(9) : 0);
        }
        SampleBlock block = coded(table);
        assertSame(table, block);
        assertRunsTell(table, block);
    }

    @Test
    void refusesEvenFramesThatAreNotAllSamplesOfTheBlock() {
        FrameTable table = new FrameTable();
        for (int frame = 0; frame < 4; frame++) {
            table.add(25L * frame, 50_000L * frame, 0, new int[25], 0, 25);
        }
        ByteWriter content = content(new SampleCodec().encode(0, 1, table));
        for (int samples : new int[] {3, 24, 75, 99, 101, 125}) {
            ByteReader in = new ByteReader(content.array(), 0, content.size());
            assertThrows(
                    IndexOutOfBoundsException.class,
                    () -> new SampleCodec().decodeFrames(in, 0, samples, new FrameTable()),
                    samples + " samples");
        }
    }

    /** The number of the first is that of the block: told once. */
    @Test
    void refusesAFirstFrameThatBeginsLater() {
        FrameTable table = new FrameTable();
        table.add(7, 8, 0, new int[25], 0, 25);
        table.add(40, 60_000, 0, new int[25], 0, 25);
        ByteWriter content = content(new SampleCodec().encode(0, 1, table));
        ByteWriter later = new ByteWriter();
        later.varint(2);
        LongColumn.encode(new long[] {25, 25}, 2, later);
        LongColumn.encode(new long[] {3, 8}, 2, later);
        ByteReader in = new ByteReader(content.array(), 0, content.size());
        in.varint();
        LongColumn.decode(in, new long[2], 2);
        LongColumn.decode(in, new long[2], 2);
        later.raw(content.array(), in.at(), in.left());
        Block block = Block.of(Block.Kind.SAMPLES, 0, 1, 7, 50, later);
        DamagedBlockException refused =
                assertThrows(DamagedBlockException.class, () -> new SpanCodec().read(block, new SampleBlock()));
        assertTrue(String.valueOf(refused.getMessage()).contains("first frame 3"), refused.getMessage());
    }

    /** A small block of a million frames of one sample, far apart, would take two hundred megabytes. */
    @Test
    void refusesMoreFramesThanABlockHas() {
        int frames = Block.SAMPLES + 1;
        FrameTable table = new FrameTable();
        for (int frame = 0; frame < frames; frame++) {
            table.add(2L * frame, 4_000L * frame, 0, new int[1], 0, 1);
        }
        Block block = new SampleCodec().encode(0, 1, table);
        assertThrows(DamagedBlockException.class, () -> new SpanCodec().read(block, new SampleBlock()));
        assertThrows(DamagedBlockException.class, () -> new SpanCodec().readFrames(block, new FrameTable()));
    }

    @Test
    void refusesABlockOfNoSample() {
        ByteWriter content = new ByteWriter();
        content.varint(0);
        content.zigzag(0);
        content.i32(0);
        Block block = Block.of(Block.Kind.SAMPLES, 0, 1, 0, 0, content);
        assertThrows(DamagedBlockException.class, () -> new SpanCodec().read(block, new SampleBlock()));
    }

    @Test
    void refusesAContentOfNothing() {
        Block block = Block.of(Block.Kind.SAMPLES, 0, 1, 0, 5, new ByteWriter());
        assertThrows(DamagedBlockException.class, () -> new SpanCodec().read(block, new SampleBlock()));
    }
}
