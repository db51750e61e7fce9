package tautlog.sample;

/**
 * Gives each sample of a frame its tick. Source: {@code firmware-notes/wire.md}: sample k of a frame was taken at
 * tick + round(k · P), halves up, P the ticks per sample between this frame and the contiguous one before, else nominal.
 *
 * <p>Feed every frame once, in order; then ask for the ticks of the frame fed last. Not thread-safe, allocates nothing.
 */
public final class SampleTicks {
    private final long nominalTicks;
    private final long nominalSamples;
    private long frameTick;
    private long ticks;
    private long samples;
    private long nextNumber = Long.MIN_VALUE;
    private long lastNumber;

    public SampleTicks(Instrument instrument) {
        nominalTicks = instrument.tickHz() * 1_000;
        nominalSamples = instrument.rateMillihertz();
    }

    /**
     * Takes the next frame.
     *
     * @param number of its first sample
     * @param tick of its first sample, unwrapped
     * @param n how many samples it holds
     */
    public void frame(long number, long tick, int n) {
        if (number == nextNumber && tick > frameTick) {
            ticks = tick - frameTick;
            samples = number - lastNumber;
        } else {
            ticks = nominalTicks;
            samples = nominalSamples;
        }
        frameTick = tick;
        lastNumber = number;
        nextNumber = number + n;
    }

    /** P of the frame fed last: so many ticks for {@link #samples} samples. */
    public long ticks() {
        return ticks;
    }

    /** See {@link #ticks}. */
    public long samples() {
        return samples;
    }

    /** The tick of sample {@code k} (0 for the first) of the frame fed last. */
    public long tickOf(int k) {
        return tickOf(k, frameTick, ticks, samples);
    }

    /** The tick of sample {@code k} of a frame at {@code frameTick} with {@code ticks} ticks for {@code samples} samples. */
    public static long tickOf(int k, long frameTick, long ticks, long samples) {
        return frameTick + Math.floorDiv(2L * k * ticks + samples, 2 * samples);
    }

    /** Whether {@code tickOf(k, frameTick, ticks, samples) <= tick}, without its division. */
    public static boolean isAtOrBefore(int k, long tick, long frameTick, long ticks, long samples) {
        // floor(x / y) <= d if and only if x < (d + 1) * y
        return 2L * k * ticks + samples < (tick - frameTick + 1) * 2 * samples;
    }

    /** The sample of such a frame of {@code n} samples whose tick is nearest to {@code tick}; at most one off. */
    public static int sampleNear(long tick, int n, long frameTick, long ticks, long samples) {
        long k = (tick - frameTick) * samples / ticks;
        return (int) Math.max(0, Math.min(n - 1L, k));
    }
}
