package tautlog.logger.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

/** Whatever comes over the line: no exception, no frame that was not sent, every piece counted once. */
class LineDamageTest {
    private static final int TEN_MILLION = 10_000_000;

    /** Feeds {@code stream} in pieces of random length. */
    private static List<String> readInParts(byte[] stream, Random random) {
        FrameText text = new FrameText();
        FrameDecoder decoder = new FrameDecoder();
        for (int at = 0; at < stream.length; ) {
            int n = Math.min(stream.length - at, random.nextInt(700));
            decoder.feed(stream, at, n, text);
            at += n;
        }
        return text.lines;
    }

    private static boolean isFrame(String line) {
        return !line.equals(line.toUpperCase(Locale.ROOT));
    }

    @Test
    void countsEveryPieceOfTenMillionRandomBytesOnceAndTakesNoneForAFrame() {
        Random random = new Random(20_260_504);
        byte[] noise = new byte[TEN_MILLION];
        random.nextBytes(noise);

        List<String> lines = readInParts(noise, random);

        assertEquals(PlainReader.pieces(noise).size(), lines.size());
        assertEquals(PlainReader.read(noise), lines);
        // about 39,000 pieces, each right by chance once in 2^32: none with this seed
        assertEquals(List.of(), lines.stream().filter(LineDamageTest::isFrame).toList());
    }

    /** Random bytes rich in zeros and small values: short pieces that decode well and fail later tests. */
    @Test
    void countsEveryPieceOfBytesThatAreMostlySmallOnce() {
        Random random = new Random(4);
        byte[] noise = new byte[1_000_000];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = (byte) (random.nextInt(20) == 0 ? 0 : random.nextInt(1 + random.nextInt(12)));
        }

        List<String> lines = readInParts(noise, random);

        assertEquals(PlainReader.read(noise), lines);
        Set<String> said = new HashSet<>(lines);
        assertEquals(Set.of("BAD_COBS", "TOO_SHORT", "BAD_CRC"), said);
    }

    @Test
    void agreesWithThePlainReaderOnFramesOfNonsenseWithAGoodChecksum() {
        RandomFrames frames = new RandomFrames(7);
        ByteArrayOutputStream stream = new ByteArrayOutputStream();
        for (int i = 0; i < 20_000; i++) {
            stream.writeBytes(frames.nextNonsense());
        }

        List<String> lines = readInParts(stream.toByteArray(), new Random(8));

        assertEquals(PlainReader.read(stream.toByteArray()), lines);
        Set<String> said = new HashSet<>(lines);
        said.removeIf(LineDamageTest::isFrame);
        assertEquals(Set.of("UNKNOWN_KIND", "BAD_LENGTH", "UNSUPPORTED_VERSION", "BAD_VALUE"), said);
    }

    @Property(tries = 300)
    void readsBackEveryFrameThatTheEncoderWrites(@ForAll long seed) {
        RandomFrames frames = new RandomFrames(seed);
        ByteArrayOutputStream stream = new ByteArrayOutputStream();
        for (int i = 0; i < 50; i++) {
            stream.writeBytes(frames.next());
        }

        List<String> lines = readInParts(stream.toByteArray(), new Random(seed));

        // the plain reader knows nothing of the encoder; that all are frames is asserted too
        assertEquals(PlainReader.read(stream.toByteArray()), lines);
        assertEquals(50, lines.stream().filter(LineDamageTest::isFrame).count());
    }

    @Property(tries = 400)
    void takesNoFrameThatWasNotSentFromADamagedStream(@ForAll long seed) {
        Random random = new Random(seed);
        RandomFrames frames = new RandomFrames(seed);
        Set<String> sent = new HashSet<>();
        ByteArrayOutputStream stream = new ByteArrayOutputStream();
        for (int i = 0; i < 100; i++) {
            byte[] frame = frames.next();
            sent.addAll(FrameText.of(frame));
            stream.writeBytes(frame);
        }

        byte[] damaged = damage(stream.toByteArray(), random);
        List<String> lines = readInParts(damaged, random);

        assertEquals(PlainReader.read(damaged), lines);
        assertEquals(PlainReader.pieces(damaged).size(), lines.size());
        for (String line : lines) {
            assertTrue(!isFrame(line) || sent.contains(line), line);
        }
    }

    /** Cuts, merges, repeats and flips bits, twenty times, anywhere. */
    private static byte[] damage(byte[] stream, Random random) {
        byte[] damaged = stream;
        for (int i = 0; i < 20; i++) {
            int from = random.nextInt(damaged.length);
            int to = Math.min(damaged.length, from + random.nextInt(400));
            byte[] before = Arrays.copyOf(damaged, from);
            byte[] part = Arrays.copyOfRange(damaged, from, to);
            byte[] after = Arrays.copyOfRange(damaged, to, damaged.length);
            damaged = switch (random.nextInt(4)) {
                case 0 -> WireVectorsTest.join(before, after);
                case 1 -> WireVectorsTest.join(before, withoutZeros(part), after);
                case 2 -> WireVectorsTest.join(before, part, part, after);
                default -> WireVectorsTest.join(before, flipped(part, random), after);
            };
        }
        return damaged;
    }

    private static byte[] withoutZeros(byte[] part) {
        ByteArrayOutputStream kept = new ByteArrayOutputStream();
        for (byte one : part) {
            if (one != 0) {
                kept.write(one);
            }
        }
        return kept.toByteArray();
    }

    private static byte[] flipped(byte[] part, Random random) {
        byte[] flipped = part.clone();
        for (int i = 0; part.length > 0 && i < 1 + random.nextInt(5); i++) {
            flipped[random.nextInt(part.length)] ^= (byte) (1 << random.nextInt(8));
        }
        return flipped;
    }
}
