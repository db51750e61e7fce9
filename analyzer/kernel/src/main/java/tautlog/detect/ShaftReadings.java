package tautlog.detect;

import java.util.Arrays;

/** Shaft readings in order of their ticks, in columns. Valid only during the call that hands it over. */
public final class ShaftReadings {
    private long[] ticks = new long[64];
    private double[] rpm = new double[64];
    private int size;

    /** Some that are known, as many as there are ticks. */
    public static ShaftReadings of(long[] ticks, double[] rpm) {
        ShaftReadings readings = new ShaftReadings();
        for (int i = 0; i < ticks.length; i++) {
            readings.add(ticks[i], rpm[i]);
        }
        return readings;
    }

    void clear() {
        size = 0;
    }

    /** @param speed NaN for a shaft frame that gave no reading */
    void add(long tick, double speed) {
        if (size == ticks.length) {
            ticks = Arrays.copyOf(ticks, 2 * size);
            rpm = Arrays.copyOf(rpm, 2 * size);
        }
        ticks[size] = tick;
        rpm[size++] = speed;
    }

    public int size() {
        return size;
    }

    public long tick(int reading) {
        return ticks[reading];
    }

    /** In revolutions per minute; NaN for a shaft frame that gave no reading. */
    public double rpm(int reading) {
        return rpm[reading];
    }

    /** The greatest speed of the readings from the first to before the last; 0 when there are none. */
    public double greatestRpmBeforeLast() {
        double greatest = 0;
        for (int i = 0; i < size - 1; i++) {
            greatest = rpm[i] > greatest ? rpm[i] : greatest;
        }
        return greatest;
    }
}
