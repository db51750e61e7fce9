package tautlog.recording;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

class SymbolStreamsTest {
    private static final int SYMBOLS = 64;
    /** Loads of eight bytes may go on behind the streams. */
    private static final byte[] BEHIND = new byte[8];

    private final Random random = new Random(1);

    private byte[] someSymbols(int n) {
        byte[] symbols = new byte[n];
        for (int i = 0; i < n; i++) {
            symbols[i] = (byte) (SymbolCode.MIDDLE + Math.round(3 * random.nextGaussian()));
        }
        return symbols;
    }

    private static byte[] coded(byte[] symbols) {
        int[] often = new int[SYMBOLS];
        for (byte symbol : symbols) {
            often[symbol]++;
        }
        ByteWriter out = new ByteWriter();
        new SymbolStreams().encode(symbols, symbols.length, often, out);
        return out.toBytes();
    }

    private static byte[] decoded(byte[] bytes, int n) {
        byte[] all = Arrays.copyOf(bytes, bytes.length + BEHIND.length);
        byte[] out = new byte[n + 1];
        ByteReader in = new ByteReader(all, 0, bytes.length);
        new SymbolStreams().decode(in, n, out);
        assertEquals(0, in.left());
        return Arrays.copyOf(out, n);
    }

    @Test
    void givesBackWhatItWasGiven() {
        for (int n = 1; n < 300; n++) {
            byte[] symbols = someSymbols(n);
            byte[] numbers = decoded(coded(symbols), n);
            byte[] back = new byte[n];
            for (int i = 0; i < n; i++) {
                back[i] = (byte) (numbers[i] + SymbolCode.MIDDLE);
            }
            assertArrayEquals(symbols, back, n + " symbols");
        }
    }

    /** A byte more or less at the end of one stream, with a length that fits it, is no such content. */
    @Test
    void refusesAStreamThatDoesNotEndWithItsLastNumber() {
        int n = 400;
        byte[] whole = coded(someSymbols(n));
        for (int stream = 0; stream < 4; stream++) {
            byte[] longer = forged(whole, stream, 1);
            byte[] shorter = forged(whole, stream, -1);

            assertThrows(IndexOutOfBoundsException.class, () -> decoded(longer, n));
            assertThrows(IndexOutOfBoundsException.class, () -> decoded(shorter, n));
        }
    }

    private static byte[] forged(byte[] whole, int stream, int more) {
        ByteReader in = new ByteReader(whole, 0, whole.length);
        new SymbolCode().read(in);
        ByteWriter out = new ByteWriter();
        out.raw(whole, 0, in.at());
        int[] lengths = new int[4];
        for (int i = 0; i < 4; i++) {
            lengths[i] = in.count(whole.length);
            out.varint(lengths[i] + (i == stream ? more : 0));
        }
        for (int i = 0; i < 4; i++) {
            byte[] bytes = in.raw(lengths[i]);
            out.raw(
                    i == stream ? Arrays.copyOf(bytes, lengths[i] + more) : bytes,
                    0,
                    lengths[i] + (i == stream ? more : 0));
        }
        return out.toBytes();
    }
}
