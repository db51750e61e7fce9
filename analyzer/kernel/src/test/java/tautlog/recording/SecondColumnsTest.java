package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import tautlog.detect.Second;
import tautlog.sample.Calibration;

class SecondColumnsTest {
    private static final int A_SPAN = 33;
    /** Of the size and with the digits that a fit gives. */
    private static final Calibration STRAIGHT =
            new Calibration(new BigDecimal("4025.122770761567"), new BigDecimal("0.49963539096"));

    private static final Calibration CURVED = new Calibration(
            new BigDecimal("4025.122770761567"), new BigDecimal("0.49963539096"), new BigDecimal("1e-7"));

    private static List<Second> back(List<Second> seconds) {
        ByteWriter content = new ByteWriter();
        SecondColumns.encode(seconds, content);
        return SecondColumnsReader.decode(new ByteReader(content.array(), 0, content.size()), seconds.size());
    }

    private static int bytes(List<Second> seconds) {
        ByteWriter content = new ByteWriter();
        SecondColumns.encode(seconds, content);
        return content.size();
    }

    /** A record takes every NaN for the same: here each bit counts. */
    static void assertSame(List<Second> expected, List<Second> actual) {
        assertEquals(expected, actual);
        for (int i = 0; i < expected.size(); i++) {
            assertEquals(
                    Double.doubleToRawLongBits(expected.get(i).share()),
                    Double.doubleToRawLongBits(actual.get(i).share()));
            assertEquals(
                    Double.doubleToRawLongBits(expected.get(i).shaftRpm().orElse(1)),
                    Double.doubleToRawLongBits(actual.get(i).shaftRpm().orElse(1)));
        }
    }

    private static Second second(int index, int least, int greatest, double rpm, String hookup, double share) {
        long sum = 500L * least + 123 * (greatest - least);
        return new Second(index, 500L * index, least, greatest, sum, 500, OptionalDouble.of(rpm), hookup, share, 0);
    }

    /** Slack and pulls by turns, as a winch has them; the share is that of {@code limit}. */
    private static List<Second> working(Random random, Calibration calibration, double limit) {
        List<Second> seconds = new ArrayList<>();
        for (int i = 0; i < A_SPAN; i++) {
            int least = 4_000 + random.nextInt(20) + (i / 10 % 2 == 1 ? 9_000 + random.nextInt(900) : 0);
            int greatest = least + 40 + random.nextInt(20);
            double rpm = i / 15 % 2 == 0 ? 0 : Math.floor(5_400 + random.nextInt(60)) / 10;
            seconds.add(second(i, least, greatest, rpm, "straight", calibration.newtons(greatest) / limit));
        }
        return seconds;
    }

    private static double anyDouble(Random random) {
        double[] some = {0, -0.0, 0.1, 540.3, 1e300, Double.MIN_VALUE, Double.NaN, Double.POSITIVE_INFINITY, -7};
        int which = random.nextInt(some.length + 2);
        return which < some.length ? some[which] : Double.longBitsToDouble(random.nextLong());
    }

    private static int anyInt(Random random) {
        return switch (random.nextInt(4)) {
            case 0 -> Integer.MIN_VALUE;
            case 1 -> Integer.MAX_VALUE;
            default -> random.nextInt() >> random.nextInt(31);
        };
    }

    private static long anyLong(Random random) {
        return switch (random.nextInt(4)) {
            case 0 -> Long.MIN_VALUE;
            case 1 -> Long.MAX_VALUE;
            default -> random.nextLong() >> random.nextInt(63);
        };
    }

    private static Second any(Random random) {
        int samples = Math.max(1, anyInt(random) & Integer.MAX_VALUE);
        boolean squares = random.nextBoolean();
        return new Second(
                anyLong(random),
                anyLong(random),
                anyInt(random),
                anyInt(random),
                anyLong(random),
                samples,
                random.nextBoolean() ? OptionalDouble.empty() : OptionalDouble.of(anyDouble(random)),
                List.of("", "straight", "½ hinüber").get(random.nextInt(3)),
                anyDouble(random),
                anyInt(random),
                squares ? new BigInteger(94, random) : BigInteger.ZERO);
    }

    @Property(tries = 1_000)
    void givesBackSecondsOfAnyNumbers(@ForAll long seed, @ForAll @IntRange(min = 1, max = 300) int n) {
        Random random = new Random(seed);
        List<Second> seconds = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            seconds.add(any(random));
        }
        assertSame(seconds, back(seconds));
    }

    @Property(tries = 200)
    void givesBackSecondsOfAWinchAtWork(@ForAll long seed) {
        Random random = new Random(seed);
        double limit = 1 + 30_000 * random.nextDouble();
        List<Second> straight = working(random, STRAIGHT, limit);
        assertSame(straight, back(straight));
        List<Second> curved = working(random, CURVED, limit);
        assertSame(curved, back(curved));
    }

    /** 7 bytes each: without columns 27. */
    @Property(tries = 200)
    void takesAFewBytesForEachSecondOfAWinchAtWork(@ForAll long seed) {
        List<Second> seconds = working(new Random(seed), STRAIGHT, 8_000);
        assertTrue(bytes(seconds) < 7 * A_SPAN, () -> bytes(seconds) + " bytes");
        ByteWriter plain = new ByteWriter();
        SecondCodec.encode(seconds, plain);
        assertTrue(plain.size() > 20 * A_SPAN, () -> plain.size() + " bytes without columns");
    }

    /** Each hookup's shares follow from its own limit; the second in which it changed from neither alone. */
    @Test
    void aSecondWithTwoHookupsCostsItsOwnShareOnly() {
        List<Second> one = working(new Random(1), STRAIGHT, 8_000);
        List<Second> mixed = new ArrayList<>();
        for (Second second : one) {
            double share = second.index() == 16 ? 0.123 : second.share() / (second.index() < 16 ? 1 : 1.7);
            mixed.add(second(
                    (int) second.index(),
                    second.least(),
                    second.greatest(),
                    second.shaftRpm().orElseThrow(),
                    second.index() < 16 ? "straight" : "choker",
                    share));
        }
        assertSame(mixed, back(mixed));
        int more = bytes(mixed) - bytes(one);
        // a name, a forecast, a bit a second, a share and its escape
        assertTrue(more < 7 + 17 + A_SPAN / 8 + 1 + 8 + 12, () -> more + " bytes more");
    }

    /** At either end of the line through the others. */
    @Test
    void oneShareThatFollowsFromAnotherCountCostsNoOther() {
        List<Second> seconds = working(new Random(1), STRAIGHT, 8_000);
        Comparator<Second> byCount = Comparator.comparing(Second::greatest);
        for (Second one : List.of(
                seconds.stream().min(byCount).orElseThrow(),
                seconds.stream().max(byCount).orElseThrow())) {
            List<Second> mixed = new ArrayList<>(seconds);
            mixed.set(
                    (int) one.index(),
                    second(
                            (int) one.index(),
                            one.least(),
                            one.greatest(),
                            one.shaftRpm().orElseThrow(),
                            one.hookup(),
                            0.123));
            assertSame(mixed, back(mixed));
            int more = bytes(mixed) - bytes(seconds);
            // the share, its escape, and a bit a second where another line is a step further off
            assertTrue(more <= 8 + 6 + 2 * A_SPAN / 8, () -> more + " bytes more");
        }
    }

    /** Its bits and those of the share foretold differ by the sign alone, 2^63. */
    @Test
    void aShareOfTheOtherSignStandsWhole() {
        ShareForecast forecast = new ShareForecast(40, 0.125);
        Second pushed = second(0, 40, 48, 540, "a", -1);
        assertEquals(0, forecast.surprise(second(0, 40, 48, 540, "a", 1)));
        assertEquals(ShareForecast.WHOLE, forecast.surprise(pushed));
        assertEquals(ShareForecast.WHOLE + 1, forecast.surprise(second(0, 40, 48, 540, "a", stepsFromOne(-1_048_575))));
        assertEquals(ShareForecast.WHOLE, forecast.surprise(second(0, 40, 48, 540, "a", stepsFromOne(-1_048_576))));
        assertEquals(1_048_575, forecast.surprise(second(0, 40, 48, 540, "a", stepsFromOne(1_048_575))));
        assertEquals(ShareForecast.WHOLE, forecast.surprise(second(0, 40, 48, 540, "a", stepsFromOne(1_048_576))));
    }

    private static double stepsFromOne(long steps) {
        return Double.longBitsToDouble(Double.doubleToRawLongBits(1) + steps);
    }

    @Test
    void aSpeedThatIsNoTenthStandsWhole() {
        List<Second> tenths = List.of(second(0, 1, 2, 540.1, "a", 0.1), second(1, 1, 2, 540.2, "a", 0.1));
        List<Second> whole = List.of(second(0, 1, 2, 540.1, "a", 0.1), second(1, 1, 2, 540.2000001, "a", 0.1));
        assertSame(whole, back(whole));
        assertTrue(bytes(whole) >= bytes(tenths) + 8);
    }

    @Test
    void isWrittenWhereItIsSmaller() {
        Span span = new Span(3, 4);
        List<Second> seconds = working(new Random(1), STRAIGHT, 8_000);
        for (Second second : seconds) {
            span.seconds.add(second);
            Block block = new SpanCodec().seconds(span).get(0);
            ByteWriter plain = new ByteWriter();
            SecondCodec.encode(span.seconds, plain);
            assertEquals(
                    Math.min(plain.size(), bytes(span.seconds)), block.size() - 36, span.seconds.size() + " seconds");
            assertEquals(bytes(span.seconds) < plain.size(), block.isInColumns());
        }
    }

    /** As when an outing of more than eighteen hours is finished whose seconds are all lost. */
    @Test
    void moreSecondsThanABlockMayHoldStandInTwo() throws DamagedBlockException {
        Span span = new Span(3, 4);
        for (int i = 0; i < 65_537; i++) {
            span.seconds.add(second(i, 1, 2, 540.1, "a", 0.1));
        }
        Span read = new Span(3, 4);
        List<Block> blocks = new SpanCodec().seconds(span);
        for (Block block : blocks) {
            new SpanCodec().append(Block.read(block.bytes(), 0), read);
        }
        assertEquals(List.of(65_536, 1), blocks.stream().map(Block::count).toList());
        assertSame(span.seconds, read.seconds);
    }

    /** Nothing but {@link DamagedBlockException}, and no more seconds than the content can hold. */
    @Property(tries = 1_000)
    void damagedContentIsRefusedOrRead(
            @ForAll long seed, @ForAll @IntRange(min = 1, max = 9) int bits, @ForAll boolean isAnyBytes) {
        Random random = new Random(seed);
        ByteWriter content = new ByteWriter();
        SecondColumns.encode(working(random, STRAIGHT, 8_000), content);
        byte[] bytes = content.toBytes();
        if (isAnyBytes) {
            random.nextBytes(bytes);
        }
        for (int i = 0; i < bits; i++) {
            bytes[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
        }
        int count = random.nextInt(5) == 0 ? random.nextInt(Block.MOST_SECONDS) : A_SPAN;
        readOrRefuse(bytes, bytes.length, count);
    }

    @Test
    void tornContentIsRefusedAtEveryByte() {
        ByteWriter content = new ByteWriter();
        SecondColumns.encode(working(new Random(1), CURVED, 8_000), content);
        for (int length = 0; length < content.size(); length++) {
            ByteReader torn = new ByteReader(content.array(), 0, length);
            assertThrows(
                    IndexOutOfBoundsException.class,
                    () -> SecondColumnsReader.decode(torn, A_SPAN),
                    "torn at " + length);
        }
    }

    @Test
    void moreSecondsThanTheBytesCanHoldAreRefusedAtOnce() {
        IndexOutOfBoundsException refused = assertThrows(
                IndexOutOfBoundsException.class,
                () -> SecondColumnsReader.decode(new ByteReader(new byte[1_000], 0, 1_000), Block.MOST_SECONDS));
        assertTrue(String.valueOf(refused.getMessage()).contains("in 1000 bytes"), refused::toString);
    }

    /** One second, from RECORDING.md by hand: each column of one number is it (zigzag), then width 0. */
    private static ByteReader oneSecond(long samples, long speed) {
        ByteWriter out = new ByteWriter();
        out.zigzag(0); // index
        out.zigzag(0); // first number
        column(samples, out);
        column(0, out); // flags
        out.varint(1);
        out.text("a");
        column(0, out); // which hookup
        numbers(0, out); // least
        numbers(0, out); // greatest - least
        numbers(0, out); // sum
        numbers(speed, out);
        if (speed == -1) {
            out.f64(540.05);
        }
        out.u8(0); // no forecast
        out.u8(0); // numbers: of no share
        out.f64(0.5);
        column(0, out); // squares
        return new ByteReader(out.array(), 0, out.size());
    }

    private static void column(long one, ByteWriter out) {
        out.zigzag(one);
        out.u8(0);
    }

    private static void numbers(long one, ByteWriter out) {
        NumberColumn.encode(new long[] {one}, 1, out);
    }

    @Test
    void refusesSecondsWithoutASample() {
        for (long samples : new long[] {1, 500, Integer.MAX_VALUE}) {
            assertEquals(
                    samples,
                    SecondColumnsReader.decode(oneSecond(samples, 0), 1).get(0).samples());
        }
        for (long samples : new long[] {0, -1, 1L << 31, (1L << 32) + 1, Long.MIN_VALUE}) {
            assertRefused(oneSecond(samples, 0), samples + " samples");
        }
    }

    @Test
    void refusesSpeedsThatMeanNothing() {
        for (OptionalDouble rpm : List.of(OptionalDouble.of(540.05), OptionalDouble.empty(), OptionalDouble.of(0))) {
            long speed = rpm.isEmpty() ? 0 : rpm.getAsDouble() == 0 ? 1 : -1;
            assertEquals(
                    rpm,
                    SecondColumnsReader.decode(oneSecond(500, speed), 1).get(0).shaftRpm());
        }
        for (long speed : new long[] {-2, -5_401, Long.MIN_VALUE}) {
            assertRefused(oneSecond(500, speed), "coded as " + speed);
        }
    }

    private static void assertRefused(ByteReader content, String words) {
        IndexOutOfBoundsException refused =
                assertThrows(IndexOutOfBoundsException.class, () -> SecondColumnsReader.decode(content, 1));
        assertTrue(String.valueOf(refused.getMessage()).contains(words), refused::toString);
    }

    private static void readOrRefuse(byte[] bytes, int length, int count) {
        ByteWriter content = new ByteWriter();
        content.raw(bytes, 0, length);
        Span span = new Span(3, 4);
        try {
            new SpanCodec().append(Block.ofColumns(3, 4, count, content), span);
            assertEquals(count, span.seconds.size());
        } catch (DamagedBlockException e) {
            assertTrue(span.seconds.isEmpty(), "nothing is left of what is refused");
        }
    }
}
