package tautlog.recording;

import java.util.Arrays;

/**
 * The numbers of full runs side by side, being written: number i of every run in lane i, each run's above those of the run before. 32 bits of
 * all lanes are a plane. So a reader takes a run's numbers out of words that lie together, with one shift for all of them, which compilers turn
 * into vector instructions. Layout: {@code analyzer/RECORDING.md}, "Planes".
 */
final class Planes implements RunBits {
    /** Bits of a lane in one plane. */
    static final int WORD = Integer.SIZE;
    /** Bytes of a whole plane. */
    static final int BYTES = RunCodec.RUN * Integer.BYTES;

    private int[] words = new int[24 * RunCodec.RUN];
    private final long[] last = new long[RunCodec.RUN];
    private int bits;

    void clear() {
        Arrays.fill(words, 0, Math.min(words.length, planes() * RunCodec.RUN), 0);
        bits = 0;
    }

    /** Planes that are begun. */
    private int planes() {
        return (bits + WORD - 1) / WORD;
    }

    /** The known ones too: every lane has a number of every run. */
    @Override
    public void put(long[] numbers, int known, int n, long base, int width) {
        int at = bits / WORD * RunCodec.RUN;
        int shift = bits % WORD;
        room(at + 2 * RunCodec.RUN);
        for (int lane = 0; lane < n; lane++) {
            long number = (numbers[lane] - base) << shift;
            words[at + lane] |= (int) number;
            words[at + RunCodec.RUN + lane] |= (int) (number >>> WORD);
        }
        bits += width;
    }

    /** Appends all planes to {@code out}; of the last, when it is not whole, the bits that it has of each lane. */
    void writeTo(ByteWriter out) {
        int whole = bits / WORD;
        out.i32s(words, 0, whole * RunCodec.RUN);
        for (int lane = 0; lane < RunCodec.RUN; lane++) {
            last[lane] = Integer.toUnsignedLong(words[whole * RunCodec.RUN + lane]);
        }
        out.packed(last, 0, RunCodec.RUN, 0, bits % WORD);
    }

    private void room(int end) {
        if (end > words.length) {
            words = Arrays.copyOf(words, Math.max(end, 2 * words.length));
        }
    }
}
