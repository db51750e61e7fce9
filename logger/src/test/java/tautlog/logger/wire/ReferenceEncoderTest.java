package tautlog.logger.wire;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.api.io.TempDir;
import tautlog.logger.wire.CReference.Build;

/**
 * The C reference for instrument builders against the logger's own encoder and decoders, which were written without it: both
 * directions, byte for byte and name for name. {@code -Dtautlog.frames=100000} takes more random frames than 10,000.
 */
class ReferenceEncoderTest {
    private static final int FRAMES = Integer.getInteger("tautlog.frames", 10_000);
    private static final List<byte[]> VECTORS = List.of(
            WireVectorsTest.HELLO,
            WireVectorsTest.TENSION,
            WireVectorsTest.SHAFT,
            WireVectorsTest.HEALTH,
            WireVectorsTest.INPUT,
            WireVectorsTest.BEACON);
    /** What wire.md says in words above each of its vectors, in the driver's fields. */
    private static final List<String> VECTORS_SAID = List.of(
            "hello 0 1 0 544c2d3030303100 7 999000 1000000 500000 8388607 6",
            "tension 1 1000000 500 0 5 0 1 -1 8388607 -8388608",
            "shaft 2 1000500 5400 3 37536 19018 500",
            "health 3 1000600 4987 -125 0",
            "input 4 1000700 2 7 2",
            "beacon 0 2");

    private static final Set<String> ALL_FAULTS = names(FrameFault.values());

    @Nested
    class CompiledPlainly extends Comparison {
        CompiledPlainly() {
            super(Build.PLAIN);
        }
    }

    @Nested
    class CompiledWithSanitizers extends Comparison {
        CompiledWithSanitizers() {
            super(Build.SANITIZED);
        }
    }

    @TestInstance(Lifecycle.PER_CLASS)
    abstract static class Comparison {
        private final Build build;
        private CReference driver;

        Comparison(Build build) {
            this.build = build;
        }

        @BeforeAll
        void compile(@TempDir Path folder) throws IOException {
            driver = CReference.compile(folder, build, "driver");
        }

        private List<String> hearInstrument(byte[] stream) throws IOException {
            return driver.run(stream, "hear-instrument").lines();
        }

        private List<String> hearLogger(byte[] stream) throws IOException {
            return driver.run(stream, "hear-logger").lines();
        }

        /** The frames in hexadecimal, or "refused". */
        private List<String> encode(List<String> lines) throws IOException {
            String text = String.join("\n", lines) + "\n";
            return driver.run(text.getBytes(StandardCharsets.US_ASCII), "encode")
                    .lines();
        }

        @Test
        void writesTheVectorsOfThePageByteForByte() throws IOException {
            assertEquals(hex(VECTORS), encode(VECTORS_SAID));
        }

        @Test
        void readsTheVectorsOfThePageEachInItsOwnDirectionOnly() throws IOException {
            byte[] stream = join(VECTORS);
            List<String> heard = new ArrayList<>(VECTORS_SAID.subList(0, 5));
            heard.add("UNKNOWN_KIND");
            assertEquals(heard, hearInstrument(stream));

            List<String> shown = new ArrayList<>(Collections.nCopies(5, "UNKNOWN_KIND"));
            shown.add(VECTORS_SAID.get(5));
            assertEquals(shown, hearLogger(stream));
        }

        @Test
        void readsAndWritesRandomFramesOfTheInstrumentAsTheLoggerDoes() throws IOException {
            // given
            RandomFrames random = new RandomFrames(20_260_504);
            List<byte[]> frames = new ArrayList<>();
            for (int i = 0; i < FRAMES; i++) {
                frames.add(random.next());
            }
            List<String> said = CFrameText.ofInstrument(join(frames));
            assertEquals(
                    FRAMES,
                    said.stream().filter(line -> !ALL_FAULTS.contains(line)).count());

            // then
            assertSameLines(said, hearInstrument(join(frames)));
            assertSameLines(hex(frames), encode(said));
        }

        @Test
        void readsAndWritesEveryBeaconAsTheLoggerDoes() throws IOException {
            // given: every state with every sequence number
            List<byte[]> frames = new ArrayList<>();
            FrameEncoder encoder = new FrameEncoder();
            byte[] out = new byte[FrameEncoder.LONGEST_FRAME];
            for (int i = 0; i < 4 * 256; i++) {
                frames.add(Arrays.copyOf(out, encoder.beacon(out, 0, i & 0xff, BeaconState.values()[i >> 8])));
            }
            List<String> said = CFrameText.ofLogger(join(frames));

            // then
            assertSameLines(said, hearLogger(join(frames)));
            assertSameLines(hex(frames), encode(said));
        }

        /** With a good checksum and any kind and payload: the later tests, and every length that stuffing can meet. */
        @Test
        void readsAndWritesNonsenseWithAGoodChecksumAsTheLoggerDoes() throws IOException {
            // given
            RandomFrames random = new RandomFrames(7);
            List<byte[]> frames = new ArrayList<>(fullGroups());
            for (int i = 0; i < FRAMES; i++) {
                frames.add(random.nextNonsense());
            }
            byte[] stream = join(frames);

            // then
            List<String> said = CFrameText.ofInstrument(stream);
            Set<String> later = Set.of("UNKNOWN_KIND", "BAD_LENGTH", "UNSUPPORTED_VERSION", "BAD_VALUE");
            assertEquals(later, faultsIn(said));
            assertSameLines(said, hearInstrument(stream));
            assertSameLines(CFrameText.ofLogger(stream), hearLogger(stream));
            assertSameLines(
                    hex(frames),
                    encode(frames.stream().map(ReferenceEncoderTest::rawLine).toList()));
        }

        @Test
        void rejectsWhatIsDamagedByTheSameNamesInTheSameOrder() throws IOException {
            // given: frames of both directions with lost, added and changed bytes, and pure noise
            Random random = new Random(11);
            RandomFrames frames = new RandomFrames(12);
            List<byte[]> sent = new ArrayList<>();
            for (int i = 0; i < FRAMES / 2; i++) {
                sent.add(i % 5 == 0 ? frames.nextNonsense() : frames.next());
                if (i % 7 == 0) {
                    sent.add(WireVectorsTest.BEACON);
                }
            }
            byte[] stream =
                    WireVectorsTest.join(damaged(join(sent), random), noise(random), piecesOfEveryLength(random));

            // then
            List<String> said = CFrameText.ofInstrument(stream);
            assertEquals(ALL_FAULTS, faultsIn(said));
            assertTrue(said.stream().anyMatch(line -> line.startsWith("tension")), "some frames come through");
            assertSameLines(said, hearInstrument(stream));
            List<String> shown = CFrameText.ofLogger(stream);
            assertTrue(shown.contains("beacon 0 2"), "some beacons come through");
            assertSameLines(shown, hearLogger(stream));
        }

        /** One out of every range; wire.md gives the ranges. */
        @Test
        void refusesToWriteWhatIsOutOfRange() throws IOException {
            List<String> bad = List.of(
                    "hello 0 1 0 544c2d3030303100 7 0 999 500000 1 6",
                    "hello 0 1 0 544c2d3030303100 7 0 4000001 500000 1 6",
                    "hello 0 1 0 544c2d3030303100 7 0 1000 999 1 6",
                    "hello 0 1 0 544c2d3030303100 7 0 1000 4000001 1 6",
                    "hello 0 1 0 544c2d3030303100 7 0 1000 1000 0 6",
                    "hello 0 1 0 544c2d3030303100 7 0 1000 1000 -1 6",
                    "hello 0 1 0 544c2d1f30303100 7 0 1000 1000 1 6",
                    "hello 0 1 0 544c2d7f30303100 7 0 1000 1000 1 6",
                    "hello 0 1 0 544c2d8030303100 7 0 1000 1000 1 6",
                    "hello 0 1 0 544c2d0030303100 7 0 1000 1000 1 6",
                    "tension 0 0 0 0 0",
                    "tension 0 0 0 0 79" + " 1".repeat(79),
                    "tension 0 0 0 0 1 8388608",
                    "tension 0 0 0 0 2 0 -8388609",
                    "shaft 0 0 0 61" + " 1".repeat(61),
                    "shaft 0 0 0 1 16777216",
                    "shaft 0 0 0 2 5 6",
                    "beacon 0 4",
                    "raw 1 0 " + "01".repeat(249));
            assertEquals(Collections.nCopies(bad.size(), "refused"), encode(bad));
        }

        /** The ends of every range are in it: the logger takes them too. */
        @Test
        void writesTheEndsOfEveryRange() throws IOException {
            List<String> good = List.of(
                    "hello 255 255 255 207e207e207e207e 4294967295 4294967295 1000 1000 1 0",
                    "hello 0 0 0 0000000000000000 0 0 4000000 4000000 2147483647 65535",
                    "tension 0 0 0 255 1 -8388608",
                    "tension 0 4294967295 4294967295 0 78" + " 8388607".repeat(78),
                    "shaft 0 0 0 0",
                    "shaft 0 0 4294967295 60" + " 16777215".repeat(60),
                    "health 0 0 65535 -32768 4294967295",
                    "health 0 0 0 32767 0",
                    "input 0 0 255 255 255");
            byte[] stream = join(encode(good).stream().map(WireVectorsTest::hex).toList());
            assertEquals(good, CFrameText.ofInstrument(stream));
        }
    }

    /** Names the first line that differs, instead of printing thousands. */
    private static void assertSameLines(List<String> expected, List<String> actual) {
        for (int i = 0; i < Math.min(expected.size(), actual.size()); i++) {
            assertEquals(expected.get(i), actual.get(i), "line " + i);
        }
        assertEquals(expected.size(), actual.size());
    }

    private static Set<String> names(FrameFault... faults) {
        Set<String> names = new HashSet<>();
        for (FrameFault fault : faults) {
            names.add(fault.name());
        }
        return names;
    }

    private static Set<String> faultsIn(List<String> lines) {
        Set<String> said = new HashSet<>(lines);
        said.retainAll(ALL_FAULTS);
        return said;
    }

    private static byte[] join(List<byte[]> frames) {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        frames.forEach(all::writeBytes);
        return all.toByteArray();
    }

    private static List<String> hex(List<byte[]> frames) {
        return frames.stream().map(HexFormat.of()::formatHex).toList();
    }

    /** Kind, seq and payload of an intact frame, for the driver. */
    private static String rawLine(byte[] frame) {
        byte[] body = frame.clone();
        int n = Cobs.decode(body, frame.length - 1);
        String payload = HexFormat.of().formatHex(body, FrameKind.HEAD, n - FrameKind.CRC);
        return "raw " + (body[0] & 0xff) + " " + (body[1] & 0xff) + " " + (payload.isEmpty() ? "-" : payload);
    }

    /** No zero in 230 to 248 bytes of payload: full groups, wherever the checksum has its zeros. */
    private static List<byte[]> fullGroups() {
        FrameEncoder encoder = new FrameEncoder();
        byte[] out = new byte[FrameEncoder.LONGEST_FRAME];
        return IntStream.rangeClosed(0, 1_000)
                .mapToObj(i -> {
                    byte[] payload = new byte[230 + i % 19];
                    Arrays.fill(payload, (byte) (1 + i % 255));
                    return Arrays.copyOf(out, encoder.raw(out, 0, 1 + i % 6, 1 + i % 255, payload));
                })
                .toList();
    }

    /** Every byte is left out, changed, doubled or put before another, once in 250 bytes each. */
    private static byte[] damaged(byte[] stream, Random random) {
        ByteArrayOutputStream damaged = new ByteArrayOutputStream();
        for (byte one : stream) {
            switch (random.nextInt(250)) {
                case 0 -> {}
                case 1 -> damaged.write(one ^ 1 << random.nextInt(8));
                case 2 -> damaged.writeBytes(new byte[] {one, one});
                case 3 -> damaged.writeBytes(new byte[] {(byte) random.nextInt(), one});
                default -> damaged.write(one);
            }
        }
        return damaged.toByteArray();
    }

    /** Mostly small bytes: pieces that are stuffed well and too short. */
    private static byte[] noise(Random random) {
        byte[] noise = new byte[100_000];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = (byte) (random.nextInt(20) == 0 ? 0 : random.nextInt(1 + random.nextInt(12)));
        }
        return noise;
    }

    /** Around the longest: 250 to 300 bytes, with and without the needless 01 after a full group. */
    private static byte[] piecesOfEveryLength(Random random) {
        ByteArrayOutputStream pieces = new ByteArrayOutputStream();
        for (int length = 250; length < 300; length++) {
            for (int last : new int[] {1, 2, random.nextInt(1, 256)}) {
                for (int first : new int[] {255, 254, random.nextInt(1, 256)}) {
                    byte[] piece = new byte[length];
                    Arrays.fill(piece, (byte) 1);
                    piece[0] = (byte) first;
                    piece[length - 1] = (byte) last;
                    pieces.writeBytes(piece);
                    pieces.write(0);
                }
            }
        }
        byte[] full = fullGroups().stream()
                .filter(f -> f.length == 256 && f[0] == -1)
                .findFirst()
                .orElseThrow();
        pieces.writeBytes(Arrays.copyOf(full, 255));
        pieces.writeBytes(new byte[] {1, 0});
        return pieces.toByteArray();
    }
}
