package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.HexFormat;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tautlog.detect.Second;

/** Blocks of seconds as they stand in recordings, byte by byte. */
class StoredSecondsTest {
    /** Of the first hookup the share 0.123 follows from no line, and another is two steps beside it; the second has no line. */
    private static final List<Second> TWO_HOOKUPS = List.of(
            new Second(7, 3500, 32, 48, 20_045, 500, OptionalDouble.empty(), "straight", 0.001, 0),
            new Second(8, 4000, 41, 1_040, 270_333, 500, OptionalDouble.of(0), "straight", 0.125, 16),
            new Second(10, 5002, -9, 8_040, 1_997_001, 498, OptionalDouble.of(540.1), "straight", 1.0, 17),
            new Second(
                    11,
                    5500,
                    7_100,
                    7_900,
                    3_749_999,
                    500,
                    OptionalDouble.of(540.2),
                    "doppelt ½",
                    0.48004150439766147,
                    0),
            new Second(
                    12,
                    6000,
                    7_080,
                    7_910,
                    3_750_123,
                    500,
                    OptionalDouble.of(540 + 39 / 7.0),
                    "doppelt ½",
                    0.4806,
                    8,
                    BigInteger.valueOf(28_127_000_000L)),
            new Second(
                    13,
                    6500,
                    2_000,
                    2_040,
                    1_010_000,
                    500,
                    OptionalDouble.of(539.9),
                    "straight",
                    0.2500000000000001,
                    0),
            new Second(14, 7000, 4_000, 4_040, 2_010_007, 500, OptionalDouble.of(539.9), "straight", 0.123, 0),
            new Second(
                    15,
                    7500,
                    4_020,
                    4_040,
                    2_014_000,
                    500,
                    OptionalDouble.empty(),
                    "straight",
                    0.5,
                    0,
                    BigInteger.valueOf(8_113_000_100L)));

    /** A block of three seconds as programs wrote it before there were columns, bytes kept from one of them. */
    @Test
    void secondsWithoutColumnsStayReadable() throws DamagedBlockException {
        Block block = Block.read(
                HexFormat.of()
                        .parseHex("544c420106010000030000000400000000000000000000000300000061000000000ed836e80740209a3f"
                                + "0023502baa5794633f0873747261696768740300000031e69f01c688a803088acc11e06fcae53f0c02ec"
                                + "07031ff670c0a6a303110214870000b9de3f49922449920c81400a646f7070656c7420c2bd0714c74a4b"
                                + "817344b1b97f80"),
                0);
        assertFalse(block.isInColumns());
        List<Second> expected = List.of(
                new Second(7, 3500, 32, 48, 20045, 500, OptionalDouble.empty(), "straight", 0.0023900711251858705, 0),
                new Second(8, 4000, 7, 10234, 3477455, 500, OptionalDouble.of(0), "straight", 0.6809615494115786, 8),
                new Second(
                        10,
                        5002,
                        -9,
                        7218,
                        3430430,
                        498,
                        OptionalDouble.of(540 + 39 / 7.0),
                        "doppelt ½",
                        0.48004150439766147,
                        17,
                        BigInteger.valueOf(3430430L * 3430430L)));
        Span span = new Span(3, 4);
        new SpanCodec().append(block, span);
        assertEquals(expected, span.seconds);

        // packed, too
        ByteWriter content = new ByteWriter();
        for (int i = 0; i < 10; i++) {
            SecondCodec.encode(expected, content);
        }
        Block repeated = Block.of(Block.Kind.SECONDS, 3, 4, 0, 3, content);
        assertTrue(repeated.deflated().size() < repeated.size());
        Span packed = new Span(3, 4);
        new SpanCodec().append(Block.read(repeated.deflated().bytes(), 0), packed);
        assertEquals(expected, packed.seconds);
    }

    /** A block as the first program that wrote columns made it; a reader in another language, made from RECORDING.md alone, reads the same. */
    @Test
    void secondsInColumnsStayReadable() throws DamagedBlockException {
        Block block = Block.read(
                HexFormat.of()
                        .parseHex(
                                "544c4201060500000300000004000000000000000000000008000000b30000000ed836000102000900ec0300"
                                        + "00000000e407028aaa00050046800000020873747261696768740a646f7070656c7420c2bd00011806024a8e"
                                        + "0095ef13f0fd80e08f020641e83e20d5050cc779b866e00905ea34026ed500e8494107be0f022900daa802e0"
                                        + "8e02401b15009c5149922449920c8140010000000000004440fca9f1d24d62203f0000670000200000080214"
                                        + "870000b9de3f52499d8026c2de3fb0726891ed7cbf3f0003004080049e5347121f6f5029091f09"),
                0);
        assertTrue(block.isInColumns());
        Span span = new Span(3, 4);
        new SpanCodec().append(block, span);
        SecondColumnsTest.assertSame(TWO_HOOKUPS, span.seconds);
    }
}
