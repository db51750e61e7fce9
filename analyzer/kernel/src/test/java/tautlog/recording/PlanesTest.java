package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.security.MessageDigest;
import java.util.Arrays;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** RECORDING.md, "Planes". */
class PlanesTest {
    private static final int FULL = SampleCodec.FULL_RUNS_OF_PLANES;

    /** Each run a level, a ramp or a walk of its own width; one frame a stretch. */
    private static FrameTable table(Random random, int stretches, int runs, int mostBits) {
        FrameTable table = new FrameTable();
        long number = 1_000;
        for (int stretch = 0; stretch < stretches; stretch++) {
            int n = runs * 128 + random.nextInt(128);
            int[] counts = new int[n];
            for (int from = 0; from < n; from += 128) {
                run(random, counts, from, Math.min(n, from + 128), random.nextInt(mostBits + 1));
            }
            table.add(number, number * 2_000, 0, counts, 0, n);
            number += n + 3;
        }
        return table;
    }

    private static void run(Random random, int[] counts, int from, int end, int bits) {
        int kind = random.nextInt(3);
        int count = random.nextInt(1 << 20) - (1 << 19);
        int slope = random.nextInt(1_000) - 500;
        for (int i = from; i < end; i++) {
            int noise = bits == 0 ? 0 : random.nextInt() >>> (32 - bits);
            count += kind == 2 ? noise - (1 << bits >> 1) : 0;
            counts[i] = kind == 2 ? count : count + noise + kind * slope * (i - from);
        }
    }

    private static Block coded(FrameTable table) {
        return new SampleCodec().encode(0, 1, table);
    }

    @Property(tries = 150)
    void givesBackWhatItWasGiven(@ForAll long seed) throws DamagedBlockException {
        Random random = new Random(seed);
        FrameTable table = table(random, 1 + random.nextInt(3), FULL + random.nextInt(30), random.nextInt(33));
        Block block = coded(table);
        assertTrue(block.isInPlanes());
        SampleBlock read = SampleCodecTest.read(block);
        SampleCodecTest.assertRunsTell(table, read);
        SampleCodecTest.assertSame(table, read);
    }

    /** Before, between and behind what a run is copied to, nothing else is written. */
    @Property(tries = 30)
    void copiesARunAlone(@ForAll long seed) throws DamagedBlockException {
        Random random = new Random(seed);
        FrameTable table = table(random, 2, FULL, 1 + random.nextInt(32));
        SampleBlock read = SampleCodecTest.read(coded(table));
        for (int run = read.runs() - 1; run >= 0; run--) {
            int n = read.runLength(run);
            int[] expected = new int[n + 20];
            Arrays.fill(expected, -77);
            int[] to = expected.clone();
            System.arraycopy(table.counts, read.runFrom(run), expected, 7, n);
            read.run(run).copyTo(to, 7);
            assertArrayEquals(expected, to);
        }
    }

    /** Bit by bit, as the page has it. */
    @Property(tries = 60)
    void standsAsThePageSays(@ForAll long seed) throws DamagedBlockException {
        Random random = new Random(seed);
        FrameTable table = table(random, 1 + random.nextInt(2), FULL + random.nextInt(9), random.nextInt(33));
        Block block = coded(table);
        SampleBlock read = SampleCodecTest.read(block);
        int[] slowly = new SlowPlanes(block, read).counts();
        assertArrayEquals(Arrays.copyOf(table.counts, table.samples()), slowly);
    }

    /** Widths that end with a plane, one bit before and one behind; numbers over the border of two planes; of 32 bits. */
    @Test
    void meetsEveryPlaceOfANumberInItsPlanes() throws DamagedBlockException {
        Set<Integer> places = new HashSet<>();
        Random random = new Random(5);
        for (int bits = 1; bits <= 32; bits++) {
            for (int runs = FULL; runs < FULL + 4; runs++) {
                FrameTable table = new FrameTable();
                int[] counts = new int[runs * 128];
                int width = bits;
                Arrays.setAll(counts, i -> random.nextInt() >>> (32 - width));
                table.add(0, 0, 0, counts, 0, counts.length);
                SampleCodecTest.assertSame(table, SampleCodecTest.read(coded(table)));
                places.add(bits * runs % 32);
            }
        }
        assertEquals(32, places.size());
    }

    @Test
    void fewRunsStandOneBehindTheOther() throws DamagedBlockException {
        FrameTable few = table(new Random(1), 1, FULL - 1, 5);
        assertFalse(coded(few).isInPlanes());
        SampleCodecTest.assertSame(few, SampleCodecTest.read(coded(few)));
        assertTrue(coded(table(new Random(1), 1, FULL, 5)).isInPlanes());
    }

    /** Of a writer that was used before nothing is left. */
    @Test
    void aCodecCanBeUsedAgain() {
        SampleCodec codec = new SampleCodec();
        FrameTable wide = table(new Random(2), 1, FULL + 40, 31);
        FrameTable narrow = table(new Random(3), 2, FULL, 3);
        byte[] alone = coded(narrow).bytes();
        codec.encode(0, 1, wide);
        assertArrayEquals(alone, codec.encode(0, 1, narrow).bytes());
        codec.encode(0, 1, narrow);
        assertArrayEquals(coded(wide).bytes(), codec.encode(0, 1, wide).bytes());
    }

    @Property(tries = 300)
    void neverReadsOutsideItsBytes(@ForAll long seed) {
        Random random = new Random(seed);
        FrameTable table = table(random, 1 + random.nextInt(2), FULL, random.nextInt(33));
        byte[] bytes = SampleCodecTest.content(coded(table)).toBytes();
        for (int flips = 0; flips < 3; flips++) {
            bytes[random.nextInt(random.nextBoolean() ? bytes.length : 120)] = (byte) random.nextInt();
        }
        ByteWriter damaged = new ByteWriter();
        damaged.raw(bytes, 0, random.nextInt(4) > 0 ? bytes.length : random.nextInt(bytes.length + 1));
        Block block = Block.ofSamples(true, 0, 1, table.number[0], table.samples(), damaged);
        SampleBlock into = new SampleBlock();
        try {
            new SpanCodec().read(block, into);
            into.counts();
        } catch (DamagedBlockException e) {
            assertTrue(String.valueOf(e.getMessage()).contains("content"));
            assertEquals(0, into.frames() + into.runs(), "nothing is left of a refused block");
        }
    }

    /** No run has more than 32 bits, or another kind than three: what a writer never makes is not guessed at. */
    @ParameterizedTest
    @ValueSource(
            longs = {33, 63, 64 + 33, 128 + 40, 192, 192 + 5, 256, -1, -64, Long.MIN_VALUE + 5, 1L << 32, (1L << 38) + 7
            })
    void refusesARunOfNoKnownCoding(long coding) throws DamagedBlockException {
        assertEquals(16 * 128, SampleCodecTest.read(ofCodings(0)).counts().length);
        Block block = ofCodings(coding);
        DamagedBlockException refused =
                assertThrows(DamagedBlockException.class, () -> new SpanCodec().read(block, new SampleBlock()));
        assertTrue(String.valueOf(refused.getMessage()).contains("a run coded as " + coding), refused.getMessage());
    }

    /** Sixteen runs, the last of which is said to be coded so; bits enough for any. */
    private static Block ofCodings(long last) {
        FrameTable table = new FrameTable();
        table.add(0, 0, 0, new int[FULL * 128], 0, FULL * 128);
        ByteWriter content = new ByteWriter();
        new SampleCodec().encodeFrames(table, content);
        long[] column = new long[FULL];
        LongColumn.encode(column, FULL, content);
        LongColumn.encode(column, FULL, content);
        column[FULL - 1] = last;
        LongColumn.encode(column, FULL, content);
        if (last != 0) {
            content.raw(new byte[64 * Planes.BYTES], 0, 64 * Planes.BYTES);
        }
        content.i32(0);
        return Block.ofSamples(true, 0, 1, 0, table.samples(), content);
    }

    @Test
    void refusesBytesThatAreNoRuns() throws DamagedBlockException {
        FrameTable table = table(new Random(6), 1, FULL, 6);
        byte[] content = SampleCodecTest.content(coded(table)).toBytes();
        for (int more : new int[] {-4, -1, 1, 4}) {
            ByteWriter other = new ByteWriter();
            other.raw(content, 0, content.length + Math.min(0, more));
            other.raw(new byte[4], 0, Math.max(0, more));
            Block block = Block.ofSamples(true, 0, 1, table.number[0], table.samples(), other);
            assertThrows(DamagedBlockException.class, () -> new SpanCodec().read(block, new SampleBlock()));
        }
    }

    /** Who reads by least and greatest alone must not be misled: the chain covers the counts only. */
    @Test
    void refusesRunsWhoseBoundsAreNotThoseOfTheirCounts() throws DamagedBlockException {
        FrameTable table = table(new Random(4), 1, FULL, 6);
        byte[] content = SampleCodecTest.content(coded(table)).toBytes();
        int otherBoundsAlone = 0;
        for (int at = 0; at < 150; at++) {
            ByteWriter changed = new ByteWriter();
            changed.raw(content, 0, content.length);
            changed.array()[at] ^= 1;
            Block block = Block.ofSamples(true, 0, 1, table.number[0], table.samples(), changed);
            if (SampleCodecTest.tellsOtherBoundsAlone(table, block)) {
                otherBoundsAlone++;
                assertThrows(DamagedBlockException.class, () -> new SpanCodec().append(block, new Span(0, 1)));
            }
        }
        assertTrue(otherBoundsAlone > 0);
    }

    /** What stands in recordings stays as it is. */
    @Test
    void isStoredAsItEverWas() throws Exception {
        int[] counts = new int[FULL * 128 + 50];
        for (int i = 0; i < counts.length; i++) {
            int run = i / 128;
            counts[i] =
                    40 + i * i % (run + 1) + (run % 3) * i * 7 - (run % 4 == 3 ? (i - 128 * run - 64) * (i & 64) : 0);
        }
        FrameTable table = new FrameTable();
        table.add(9, 1_234, 0, counts, 0, counts.length);
        byte[] bytes = coded(table).bytes();
        SampleCodecTest.assertSame(table, SampleCodecTest.read(Block.read(bytes, 0)));
        assertEquals(
                "52e3aaa8a596eed0dbef3caa2cfb01a33a54ff5df0d13be202370a78f9475152",
                HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes)));
    }
}
