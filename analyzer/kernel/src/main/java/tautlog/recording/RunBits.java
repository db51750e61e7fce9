package tautlog.recording;

/** Where the numbers of a run go: one behind the other ({@link ByteWriter}), or, of a full run, in planes ({@link Planes}). */
interface RunBits {
    /**
     * Takes {@code numbers[i] - base} in {@code width} bits each, 0 to 32.
     *
     * @param known how many of the first a reader does without; they equal {@code base}
     * @param n how many there are with those
     */
    void put(long[] numbers, int known, int n, long base, int width);
}
