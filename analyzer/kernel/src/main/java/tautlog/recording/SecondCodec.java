package tautlog.recording;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import tautlog.detect.Second;

/** Codes a list of seconds. Layout: {@code analyzer/RECORDING.md}, "Seconds". */
final class SecondCodec {
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
        out.u8((sameHookup ? 1 : 0) | (rpm << 1));
        out.zigzag(second.index() - before.index() - 1);
        out.zigzag(second.firstNumber() - before.firstNumber() - before.samples());
        out.zigzag((long) second.samples() - before.samples());
        out.zigzag((long) second.least() - before.least());
        out.zigzag((long) second.greatest() - second.least());
        out.zigzag(second.countSum() - (long) second.least() * second.samples());
        out.varint(second.flags());
        out.i64(bits(second.share()));
        if (rpm == 2) {
            out.i64(bits(second.shaftRpm().getAsDouble()));
        }
        if (!sameHookup) {
            out.text(second.hookup());
        }
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
        double share = Double.longBitsToDouble(in.i64());
        OptionalDouble rpm = OptionalDouble.empty();
        if (head >>> 1 == 1) {
            rpm = OptionalDouble.of(0);
        } else if (head >>> 1 == 2) {
            rpm = OptionalDouble.of(Double.longBitsToDouble(in.i64()));
        }
        String hookup = (head & 1) == 1 ? before.hookup() : in.text();
        return new Second(index, first, least, greatest, sum, samples, rpm, hookup, share, flags);
    }
}
