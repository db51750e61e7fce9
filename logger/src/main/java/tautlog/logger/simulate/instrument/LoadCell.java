package tautlog.logger.simulate.instrument;

import java.util.Random;
import java.util.SplittableRandom;

/**
 * A load cell with its amplifier and converter: gain, zero, drift with temperature, noise, end stops.
 *
 * <p>Bandwidth, noise and drift: chosen, typical of a bridge of 2 mV/V and a converter of 500 samples a second, no source.
 */
public final class LoadCell {
    /** What the calibration in {@code samples/calibration.toml} found, to the scatter of its readings. */
    public static final double NEWTONS_PER_COUNT = 0.5;

    public static final int ZERO_COUNTS = 4_000;
    /** The greatest count: about 63.5 kN. */
    public static final int FULL_SCALE = 131_071;

    private static final double AMPLIFIER_SECONDS = 0.000_8;
    private static final double NOISE_COUNTS = 4;
    private static final double DRIFT_NEWTONS_PER_KELVIN = 5;
    private static final double CALIBRATED_AT_CELSIUS = 12;
    private static final double GAIN_ERROR = 0.001;
    private static final int NOISES = 8_192;

    private final float[] noise = new float[NOISES];
    private final SplittableRandom pick;
    private double seenNewtons;
    private double seenBefore;
    private boolean open;
    private double spikeNewtons;

    public LoadCell(long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < NOISES; i++) {
            noise[i] = (float) (random.nextGaussian() * NOISE_COUNTS);
        }
        pick = new SplittableRandom(seed);
    }

    /** The line pulls with {@code newtons} for {@code h} seconds. */
    void feel(double newtons, double h) {
        seenBefore = seenNewtons;
        seenNewtons += (newtons - seenNewtons) * (h / (AMPLIFIER_SECONDS + h));
    }

    /** Breaks a wire of the cable, or mends it. */
    void setOpen(boolean open) {
        this.open = open;
    }

    boolean isOpen() {
        return open;
    }

    /** Interference: the next reading is off by {@code newtons}. */
    void spike(double newtons) {
        spikeNewtons = newtons;
    }

    /**
     * Converts.
     *
     * @param part of the step before the present at which the sample is taken: 0 its start, 1 its end
     * @param celsius of the cell
     */
    int counts(double part, double celsius) {
        if (open) {
            return pick.nextInt(-FULL_SCALE, FULL_SCALE); // a floating input, anywhere
        }
        double newtons = seenBefore + (seenNewtons - seenBefore) * part + spikeNewtons;
        spikeNewtons = 0;
        newtons += (celsius - CALIBRATED_AT_CELSIUS) * DRIFT_NEWTONS_PER_KELVIN;
        double exact = ZERO_COUNTS + newtons * (1 + GAIN_ERROR) / NEWTONS_PER_COUNT + noise[pick.nextInt(NOISES)];
        return (int) Math.max(-FULL_SCALE - 1, Math.min(FULL_SCALE, Math.rint(exact)));
    }
}
