package tautlog.desk.uncertainty;

/**
 * How a figure was made of readings.
 *
 * @param averaged over how many it is the mean, 1 or more
 * @param asHigh of how many about equally high ones it is the greatest, 1 or more
 */
record Figure(double averaged, double asHigh) {
    static final Figure ONE_READING = new Figure(1, 1);
    /** Noise and resolution average out altogether. */
    static final Figure MEAN_OF_MANY = meanOf(Double.POSITIVE_INFINITY);

    static Figure greatestOf(double asHigh) {
        return new Figure(1, asHigh);
    }

    static Figure meanOf(double readings) {
        return new Figure(readings, 1);
    }

    boolean isMean() {
        return averaged > 1;
    }
}
