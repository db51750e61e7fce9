package tautlog.recording;

import java.util.Arrays;

/**
 * A prefix code over {@link #SYMBOLS} symbols: the more often one comes, the fewer bits it takes (Huffman, canonical: what decides is only
 * the length of each symbol's code). Layout: {@code analyzer/RECORDING.md}, "Packed". Reused from block to block.
 */
final class SymbolCode {
    /** Each stands for a whole number of −32 to 31. */
    static final int SYMBOLS = 64;

    static final int MIDDLE = SYMBOLS / 2;
    /** Bits of the longest code; chosen: a table of 4,096 entries stays in the nearest cache. */
    static final int LONGEST = 12;

    /** Two symbols of five bits are found at once. */
    private static final int LEAST_WIDTH = 10;

    private final int[] lengths = new int[SYMBOLS];
    private final int[] codes = new int[SYMBOLS];
    private final int[] single = new int[1 << LONGEST];
    private final int[] table = new int[1 << LONGEST];
    private int width;

    int length(int symbol) {
        return lengths[symbol];
    }

    /** The bits of {@code symbol}, the first in the least place. */
    int code(int symbol) {
        return codes[symbol];
    }

    /** Makes the code that is shortest for symbols that come so often; at least two get one. */
    void fit(int[] often) {
        int[] weights = often.clone();
        for (int symbol = 0, kinds = kinds(weights); kinds < 2; symbol++) {
            kinds += weights[symbol] == 0 ? 1 : 0;
            weights[symbol] = Math.max(1, weights[symbol]);
        }
        while (!fitWithin(weights)) {
            for (int i = 0; i < SYMBOLS; i++) {
                weights[i] = weights[i] == 0 ? 0 : weights[i] / 2 + 1; // evens them out, until no code is too long
            }
        }
        assign();
    }

    private static int kinds(int[] weights) {
        return (int) Arrays.stream(weights).filter(weight -> weight > 0).count();
    }

    /** False when a code would be too long. */
    private boolean fitWithin(int[] weights) {
        int[] weight = Arrays.copyOf(weights, 2 * SYMBOLS);
        int[] parent = new int[2 * SYMBOLS];
        int nodes = SYMBOLS;
        for (int left = kinds(weights); left > 1; left--) {
            int one = takeLightest(weight, nodes);
            long light = weight[one];
            weight[one] = 0;
            int other = takeLightest(weight, nodes);
            light += weight[other];
            weight[other] = 0;
            weight[nodes] = (int) light;
            parent[one] = nodes;
            parent[other] = nodes++;
        }
        int longest = 0;
        for (int symbol = 0; symbol < SYMBOLS; symbol++) {
            int depth = 0;
            for (int node = symbol; parent[node] != 0; node = parent[node]) {
                depth++;
            }
            lengths[symbol] = depth;
            longest = Math.max(longest, depth);
        }
        return longest <= LONGEST;
    }

    private static int takeLightest(int[] weight, int nodes) {
        int best = -1;
        for (int i = 0; i < nodes; i++) {
            if (weight[i] > 0 && (best < 0 || weight[i] < weight[best])) {
                best = i;
            }
        }
        return best;
    }

    /** Half a byte a symbol: the length of its code, 0 for one that does not come. */
    void write(ByteWriter out) {
        for (int symbol = 0; symbol < SYMBOLS; symbol += 2) {
            out.u8(lengths[symbol] | (lengths[symbol + 1] << 4));
        }
    }

    /** @throws IndexOutOfBoundsException if no complete code has such lengths */
    void read(ByteReader in) {
        int longest = 0;
        int filled = 0;
        for (int symbol = 0; symbol < SYMBOLS; symbol += 2) {
            int two = in.u8();
            lengths[symbol] = two & 15;
            lengths[symbol + 1] = two >>> 4;
        }
        for (int length : lengths) {
            longest = Math.max(longest, length);
            filled += length == 0 || length > LONGEST ? 0 : 1 << (LONGEST - length);
        }
        if (longest > LONGEST || filled != 1 << LONGEST) {
            throw new IndexOutOfBoundsException(
                    "codes of such lengths do not stand apart, or leave some bits without meaning");
        }
        assign();
        fillTable(longest);
    }

    /** Shorter codes first, of equal length the lesser symbol first; counted up, the highest bit is the first to be read. */
    private void assign() {
        int code = 0;
        for (int length = 1; length <= LONGEST; length++) {
            for (int symbol = 0; symbol < SYMBOLS; symbol++) {
                if (lengths[symbol] == length) {
                    codes[symbol] = Integer.reverse(code++) >>> (32 - length);
                }
            }
            code <<= 1;
        }
    }

    /** For the next {@link #width} bits, whatever follows: what {@link Entry} says of them. */
    private void fillTable(int longest) {
        width = Math.max(longest, LEAST_WIDTH);
        for (int symbol = 0; symbol < SYMBOLS; symbol++) {
            int length = lengths[symbol];
            if (length > 0) {
                int entry = Entry.of(symbol - MIDDLE, length);
                for (int i = codes[symbol]; i < 1 << width; i += 1 << length) {
                    single[i] = entry;
                }
            }
        }
        for (int symbol = 0; symbol < SYMBOLS; symbol++) {
            if (lengths[symbol] > 0) {
                follow(symbol);
            }
        }
    }

    /** The entries that begin with {@code symbol}. */
    private void follow(int symbol) {
        int length = lengths[symbol];
        int first = Entry.of(symbol - MIDDLE, length);
        int left = width - length;
        for (int i = 0, at = codes[symbol]; i < 1 << left; i++, at += 1 << length) {
            int next = single[i];
            table[at] = Entry.firstLength(next) <= left ? Entry.two(first, next) : first;
        }
    }

    /** How many bits select an entry of {@link #table}. */
    int width() {
        return width;
    }

    /** After {@link #read}: an {@link Entry} for each value of the next {@link #width} bits. Not to be changed. */
    int[] table() {
        return table;
    }

    /** What some bits begin with: one symbol or, where they hold that many whole, two. Packed into an int. */
    static final class Entry {
        private static final int SECOND = 8;
        private static final int FIRST_LENGTH = 16;
        private static final int LENGTH = 20;
        private static final int COUNT = 25;

        private Entry() {}

        private static int of(int number, int length) {
            return (number & 0xFF) | length << FIRST_LENGTH | length << LENGTH | 1 << COUNT;
        }

        private static int two(int first, int second) {
            return first + ((second & 0xFF) << SECOND) + (firstLength(second) << LENGTH) + (1 << COUNT);
        }

        /** The first number as its least byte, the second as the next. */
        static short numbers(int entry) {
            return (short) entry;
        }

        static int firstLength(int entry) {
            return entry >>> FIRST_LENGTH & 15;
        }

        /** Bits of all its symbols. */
        static int length(int entry) {
            return entry >>> LENGTH & 31;
        }

        /** How many symbols, 1 or 2. */
        static int count(int entry) {
            return entry >>> COUNT;
        }
    }
}
