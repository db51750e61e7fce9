package tautlog.recording;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import tautlog.detect.Second;

/** Codes a list of seconds one after the other, as was done before {@link SecondColumns}, and still is with very few. Layout: {@code analyzer/RECORDING.md}, "Seconds". */
final class SecondCodec {
    /** Bit of a second's head: a sum of squares follows. */
    private static final int SQUARES = 8;
    /** More than any sum of squares of a second takes. */
    private static final int MOST_BYTES = 32;

    private SecondCodec() {}

    static void encode(List<Second> seconds, ByteWriter out) {
        Second before = new Second(-1, 0, 0, 0, 0, 0, OptionalDouble.empty(), "", 0, 0);
        for (Second second : seconds) {
            encode(second, before, out);
            before = second;
        }
    }

    private static void encode(Second second, Second before, ByteWriter out) {
        boolean sameHookup = second.hookup().equals(before.hookup());
        boolean zeroRpm =
                second.shaftRpm().isPresent() && bits(second.shaftRpm().getAsDouble()) == 0;
        int rpm = second.shaftRpm().isEmpty() ? 0 : zeroRpm ? 1 : 2;
        boolean squares = second.countSquares().signum() != 0;
        out.u8((sameHookup ? 1 : 0) | (rpm << 1) | (squares ? SQUARES : 0));
        out.zigzag(second.index() - before.index() - 1);
        out.zigzag(second.firstNumber() - before.firstNumber() - before.samples());
        out.zigzag((long) second.samples() - before.samples());
        out.zigzag((long) second.least() - before.least());
        out.zigzag((long) second.greatest() - second.least());
        out.zigzag(second.countSum() - (long) second.least() * second.samples());
        out.varint(second.flags());
        out.f64(second.share());
        if (rpm == 2) {
            out.f64(second.shaftRpm().getAsDouble());
        }
        if (!sameHookup) {
            out.text(second.hookup());
        }
        if (squares) {
            byte[] big = spread(second);
            out.varint(big.length);
            out.raw(big, 0, big.length);
        }
    }

    /** n · Σc² − (Σc)²: small where the tension is steady; two's complement, most significant byte first. */
    static byte[] spread(Second second) {
        BigInteger sum = BigInteger.valueOf(second.countSum());
        return second.countSquares()
                .multiply(BigInteger.valueOf(second.samples()))
                .subtract(sum.multiply(sum))
                .toByteArray();
    }

    private static long bits(double value) {
        return Double.doubleToRawLongBits(value);
    }

    /** @throws IndexOutOfBoundsException if the bytes are no such content */
    static List<Second> decode(ByteReader in, int count) {
        List<Second> seconds = new ArrayList<>();
        Second before = new Second(-1, 0, 0, 0, 0, 0, OptionalDouble.empty(), "", 0, 0);
        for (int i = 0; i < count; i++) {
            before = decode(in, before);
            seconds.add(before);
        }
        return seconds;
    }

    private static Second decode(ByteReader in, Second before) {
        int head = in.u8();
        long index = before.index() + 1 + in.zigzag();
        long first = before.firstNumber() + before.samples() + in.zigzag();
        int samples = before.samples() + (int) in.zigzag();
        int least = before.least() + (int) in.zigzag();
        int greatest = least + (int) in.zigzag();
        long sum = (long) least * samples + in.zigzag();
        int flags = (int) in.varint();
        double share = in.f64();
        OptionalDouble rpm = OptionalDouble.empty();
        int speed = head >>> 1 & 3;
        if (speed == 1) {
            rpm = OptionalDouble.of(0);
        } else if (speed == 2) {
            rpm = OptionalDouble.of(in.f64());
        }
        String hookup = (head & 1) == 1 ? before.hookup() : in.text();
        BigInteger squares = (head & SQUARES) == 0 ? BigInteger.ZERO : squares(in, in.varint(), sum, samples);
        return new Second(index, first, least, greatest, sum, samples, rpm, hookup, share, flags, squares);
    }

    /**
     * The sum of squares of a second from the bytes of {@link #spread}.
     *
     * @param length how many there are
     */
    static BigInteger squares(ByteReader in, long length, long countSum, int samples) {
        if (length < 1 || length > MOST_BYTES || samples <= 0) {
            throw new IndexOutOfBoundsException("a sum of squares of " + samples + " samples in " + length + " bytes");
        }
        byte[] big = in.raw((int) length);
        BigInteger sum = BigInteger.valueOf(countSum);
        return new BigInteger(big).add(sum.multiply(sum)).divide(BigInteger.valueOf(samples));
    }
}
