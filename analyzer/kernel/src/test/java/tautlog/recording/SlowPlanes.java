package tautlog.recording;

/** Reads the counts of a block in planes bit by bit, by the words of RECORDING.md. */
final class SlowPlanes {
    private final byte[] bytes;
    private final SampleBlock block;
    private final ByteReader in;
    private final int[] kind;
    private final int[] width;
    private final long[] first;
    private final long[] second;

    /** @param block the same, read: frames and the cut into runs are taken from it */
    SlowPlanes(Block coded, SampleBlock block) {
        this.block = block;
        in = coded.content();
        bytes = in.array();
        kind = new int[block.runs()];
        width = new int[block.runs()];
        first = new long[block.runs()];
        second = new long[block.runs()];
        skipFrames();
        readDirectory();
    }

    /** Five columns; the last two of those runs alone that are no level. */
    private void readDirectory() {
        long[] least = column(block.runs());
        column(block.runs());
        long[] coding = column(block.runs());
        int bent = 0;
        for (int run = 0; run < block.runs(); run++) {
            kind[run] = (int) coding[run] >> 6;
            width[run] = (int) coding[run] & 63;
            bent += kind[run] > 0 ? 1 : 0;
        }
        long[] base = column(bent);
        long[] slope = column(bent);
        long low = 0;
        int next = 0;
        for (int run = 0; run < block.runs(); run++) {
            low += least[run];
            first[run] = low;
            if (kind[run] > 0) {
                first[run] += base[next];
                second[run] = slope[next++];
            }
        }
    }

    private long[] column(int n) {
        long[] column = new long[n];
        LongColumn.decode(in, column, n);
        return column;
    }

    private void skipFrames() {
        int frames = (int) in.varint();
        column(frames);
        column(frames);
        in.zigzag();
        column(frames);
        column(frames);
    }

    int[] counts() {
        int lane = 0;
        for (int run = 0; run < block.runs(); run++) {
            lane += isFull(run) ? width[run] : 0;
        }
        int[] counts = new int[block.samples()];
        int bit = 0;
        int rest = 8 * (in.at() + lane / 32 * 512 + lane % 32 * 16);
        for (int run = 0; run < block.runs(); run++) {
            long[] numbers = new long[block.runLength(run)];
            for (int i = 0; i < numbers.length; i++) {
                numbers[i] = isFull(run) ? inPlanes(i, bit, width[run], lane) : apart(rest, i, run);
            }
            bit += isFull(run) ? width[run] : 0;
            rest += isFull(run) ? 0 : ((numbers.length - (kind[run] == 2 ? 1 : 0)) * width[run] + 7) / 8 * 8;
            write(run, numbers, counts);
        }
        if (rest != 8 * (in.at() + in.left() - 4)) {
            throw new AssertionError("bits end at " + rest);
        }
        return counts;
    }

    private boolean isFull(int run) {
        return block.runLength(run) == 128;
    }

    /** Bit b of lane i: of plane b / 32, its u32 number i, bit b mod 32; in the last, not whole, one of r bits, bit i · r + b mod 32. */
    private long inPlanes(int i, int from, int bits, int lane) {
        long number = 0;
        for (int k = 0; k < bits; k++) {
            int b = from + k;
            int plane = 8 * (in.at() + b / 32 * 512);
            int place = b / 32 < lane / 32 ? plane + 32 * i + b % 32 : plane + i * (lane % 32) + b % 32;
            number |= bit(place) << k;
        }
        return number;
    }

    private long apart(int from, int i, int run) {
        int at = kind[run] == 2 ? i - 1 : i;
        long number = 0;
        for (int k = 0; k < width[run] && at >= 0; k++) {
            number |= bit(from + at * width[run] + k) << k;
        }
        return number;
    }

    private long bit(int place) {
        return bytes[place / 8] >> place % 8 & 1;
    }

    private void write(int run, long[] numbers, int[] counts) {
        int from = block.runFrom(run);
        for (int i = 0; i < numbers.length; i++) {
            long count = switch (kind[run]) {
                case 0 -> first[run] + numbers[i];
                case 1 -> first[run] + (i * second[run] >> 8) + numbers[i];
                default -> i == 0 ? first[run] : counts[from + i - 1] + second[run] + numbers[i];
            };
            counts[from + i] = (int) count;
        }
    }
}
