package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.IntUnaryOperator;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** RECORDING.md, "Packed". */
class PackedCodecTest {
    private static ByteWriter content(FrameTable table) {
        ByteWriter content = new ByteWriter();
        new PackedCodec(new SampleCodec()).encode(table, content);
        return content;
    }

    private static Block block(FrameTable table, ByteWriter content) {
        return Block.of(Block.Kind.SAMPLES, 0, 1, table.number[0], table.samples(), new ByteWriter())
                .packed(content);
    }

    private static SampleBlock coded(FrameTable table) throws DamagedBlockException {
        SampleBlock decoded = new SampleBlock();
        new SpanCodec().read(Block.read(block(table, content(table)).bytes(), 0), decoded);
        return decoded;
    }

    private static FrameTable counts(int n, IntUnaryOperator count) {
        FrameTable table = new FrameTable();
        table.add(7, 8, 0, IntStream.range(0, n).map(count).toArray(), 0, n);
        return table;
    }

    private static void assertComesBack(FrameTable table) throws DamagedBlockException {
        SampleBlock block = coded(table);
        SampleCodecTest.assertRunsTell(table, block);
        SampleCodecTest.assertSame(table, block);
    }

    @Property(tries = 300)
    void givesBackWhatItWasGiven(
            @ForAll long seed, @ForAll @IntRange(min = 1, max = 60) int frames, @ForAll @IntRange(max = 32) int bits)
            throws DamagedBlockException {
        assertComesBack(SampleCodecTest.random(new Random(seed), frames, bits, 90));
    }

    /** Of every width, round a level that is steady, moves evenly, or leaps. */
    @Property(tries = 15)
    void givesBackLongStretchesInEveryWidth(@ForAll long seed) throws DamagedBlockException {
        Random random = new Random(seed);
        for (int bits = 0; bits <= 32; bits++) {
            int base = random.nextInt();
            int slope = random.nextInt(3) * random.nextInt(5_000);
            int leap = random.nextInt() >> random.nextInt(32);
            int width = bits;
            assertComesBack(counts(
                    700 + random.nextInt(5_000),
                    i -> base
                            + slope * i
                            + (i % 999 > 700 ? leap : 0)
                            + (width == 0 ? 0 : random.nextInt() >>> (32 - width))));
        }
    }

    @Property(tries = 60)
    void givesBackWhatFollowsNoLine(@ForAll long seed, @ForAll @IntRange(min = 1, max = 20_000) int n)
            throws DamagedBlockException {
        Random random = new Random(seed);
        int[] walk = new int[n];
        for (int i = 1, step = 0; i < n; i++) {
            step += random.nextInt(9) - 4;
            walk[i] = walk[i - 1] + step;
        }
        assertComesBack(counts(n, i -> walk[i]));
    }

    @Test
    void givesBackExtremesSideBySide() throws DamagedBlockException {
        assertComesBack(counts(5_000, i -> i % 2 == 0 ? Integer.MIN_VALUE : Integer.MAX_VALUE));
        assertComesBack(counts(300, i -> i % 97 == 0 ? Integer.MIN_VALUE : 3));
        assertComesBack(counts(300, i -> Integer.MAX_VALUE));
        assertComesBack(counts(4_097, i -> i * 1_000_003));
    }

    @Test
    void givesBackBlocksOfEveryLength() throws DamagedBlockException {
        Random random = new Random(4);
        for (int n = 1; n < 300; n++) {
            assertComesBack(counts(n, i -> random.nextInt(17) - 8));
            assertComesBack(counts(n, i -> 12));
        }
    }

    /** log2(17) = 4.0875 bits are 0.511 bytes: what uniform noise of 17 values takes at least. */
    @Test
    void comesNearTheEntropyOfTheNoise() {
        Random random = new Random(5);
        ByteWriter content = content(counts(16_384, i -> 40 + random.nextInt(17) - 8));
        assertTrue(content.size() < 0.519 * 16_384, content.size() + " bytes");
    }

    /** Nothing happens: a few bytes for each 2,048 counts. */
    @Test
    void spendsNearlyNothingOnAStillLine() {
        assertTrue(content(counts(16_384, i -> 512)).size() < 60);
    }

    /** Whatever bytes with a checksum that fits: all of it is read, or nothing is left and the trouble named. */
    @Property(tries = 400)
    void neverReadsOutsideItsBytes(@ForAll long seed) {
        Random random = new Random(seed);
        FrameTable table = SampleCodecTest.random(random, 1 + random.nextInt(40), random.nextInt(33), 40);
        byte[] bytes = content(table).toBytes();
        for (int flips = random.nextInt(4); flips > 0; flips--) {
            bytes[random.nextInt(bytes.length)] = (byte) random.nextInt();
        }
        int length = random.nextBoolean() ? bytes.length : random.nextInt(bytes.length + 1);
        assertReadsAllOrNothing(table, bytes, length);
    }

    @Test
    void isRefusedWhereverItIsTorn() {
        Random random = new Random(6);
        FrameTable table = counts(400, i -> random.nextInt(17) + i / 7 * (i % 3));
        byte[] bytes = content(table).toBytes();
        for (int length = 0; length < bytes.length; length++) {
            ByteWriter torn = new ByteWriter();
            torn.raw(bytes, 0, length);
            Block block = block(table, torn);
            assertThrows(
                    DamagedBlockException.class, () -> new SpanCodec().read(block, new SampleBlock()), "at " + length);
        }
    }

    private static void assertReadsAllOrNothing(FrameTable table, byte[] bytes, int length) {
        ByteWriter damaged = new ByteWriter();
        damaged.raw(bytes, 0, length);
        SampleBlock into = new SampleBlock();
        try {
            new SpanCodec().read(block(table, damaged), into);
            assertEquals(table.samples(), into.samples());
        } catch (DamagedBlockException e) {
            assertTrue(String.valueOf(e.getMessage()).contains("content"));
            assertEquals(0, into.frames() + into.runs(), "nothing is left of a refused block");
        }
    }

    /** A code that leaves bits without meaning, or gives some two, would be read as anything. */
    @Test
    void refusesCodesThatDoNotStandApart() {
        for (List<Integer> lengths :
                List.of(List.of(1), List.of(1, 1, 1), List.of(13, 1), List.of(2, 2, 2), List.of(0))) {
            byte[] bytes = new byte[SymbolCode.SYMBOLS / 2];
            for (int i = 0; i < lengths.size(); i++) {
                bytes[i / 2] |= (byte) (lengths.get(i) << (i % 2 * 4));
            }
            ByteReader in = new ByteReader(bytes, 0, bytes.length);
            assertThrows(IndexOutOfBoundsException.class, () -> new SymbolCode().read(in), lengths.toString());
        }
    }

    @Property(tries = 200)
    void numbersOfBitsComeBack(@ForAll List<Integer> numbers, @ForAll @IntRange(max = 6) int scale) {
        BitWriter bits = new BitWriter();
        int length = 0;
        for (int number : numbers) {
            bits.number(number, scale);
            length += BitWriter.length(number, scale);
        }
        assertEquals((length + 7) / 8, bits.size());
        ByteWriter bytes = new ByteWriter();
        bits.finish(bytes);
        BitReader reader = new BitReader(new ByteReader(bytes.array(), 0, bytes.size()));
        for (int number : numbers) {
            assertEquals(number, reader.number(scale));
        }
    }

    @Property(tries = 100)
    void deflatedContentComesBack(@ForAll byte[] bytes) throws DamagedBlockException {
        ByteWriter content = new ByteWriter();
        content.raw(new byte[300], 0, 300);
        content.raw(bytes, 0, bytes.length);
        Block block = Block.of(Block.Kind.SECONDS, 3, 4, 0, 5, content);
        Block deflated = Block.read(block.deflated().bytes(), 0);
        assertTrue(deflated.size() < block.size());
        ByteReader back = deflated.content();
        assertEquals(Arrays.toString(content.toBytes()), Arrays.toString(back.raw(back.left())));
    }

    @Test
    void contentThatDoesNotShrinkIsNotDeflated() {
        ByteWriter content = new ByteWriter();
        content.i32(0x1234_5678);
        Block block = Block.of(Block.Kind.SECONDS, 3, 4, 0, 5, content);
        assertSame(block, block.deflated());
    }

    @Test
    void deflatedContentThatIsTornOrOfAnotherLengthIsRefused() {
        ByteWriter whole = new ByteWriter();
        byte[] zeros = new byte[70_000];
        Deflated.write(zeros, 0, zeros.length, whole);
        for (int length = 0; length < whole.size(); length++) {
            ByteReader torn = new ByteReader(whole.array(), 0, length);
            assertThrows(IndexOutOfBoundsException.class, () -> Deflated.read(torn), "torn at " + length);
        }
        ByteReader in = new ByteReader(whole.array(), 0, whole.size());
        in.varint();
        for (int length : new int[] {69_999, 70_001, 1 << 24, (1 << 24) + 1}) {
            ByteWriter lying = new ByteWriter();
            lying.varint(length);
            lying.raw(whole.array(), in.at(), in.left());
            ByteReader lie = new ByteReader(lying.array(), 0, lying.size());
            assertThrows(IndexOutOfBoundsException.class, () -> Deflated.read(lie), "said to be " + length);
        }
    }
}
