package tautlog.logger.simulate.instrument;

import java.util.SplittableRandom;

/** The serial line: hands on what it is given, and now and then, when told, flips or loses a byte of a frame. */
final class FaultyLine {
    private final ByteSink sink;
    private final SplittableRandom random;
    private final byte[] pending = new byte[4096];
    private int size;
    private int toFlip;
    private int toLose;
    private long damaged;

    FaultyLine(ByteSink sink, long seed) {
        this.sink = sink;
        random = new SplittableRandom(seed);
    }

    /** In each of the next {@code frames} frames one byte arrives wrong. */
    void flipIn(int frames) {
        toFlip += frames;
    }

    /** In each of the next {@code frames} frames one byte does not arrive. */
    void loseIn(int frames) {
        toLose += frames;
    }

    long damaged() {
        return damaged;
    }

    /** Where the next frame is written; it fits. */
    byte[] buffer() {
        return pending;
    }

    int size() {
        return size;
    }

    /** A frame was written from {@link #size()} to {@code end}. */
    void added(int end) {
        int from = size;
        size = end;
        if (toFlip > 0) {
            toFlip--;
            damaged++;
            pending[random.nextInt(from, end - 1)] ^= (byte) (1 << random.nextInt(8));
        } else if (toLose > 0) {
            toLose--;
            damaged++;
            int lost = random.nextInt(from, end - 1);
            System.arraycopy(pending, lost + 1, pending, lost, end - lost - 1);
            size = end - 1;
        }
    }

    void flush(double seconds) {
        if (size > 0) {
            sink.send(pending, size, seconds);
            size = 0;
        }
    }
}
