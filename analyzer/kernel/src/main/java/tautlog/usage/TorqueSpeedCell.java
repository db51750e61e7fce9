package tautlog.usage;

/**
 * Time spent at a torque and a speed of the shaft, both as shares of its rating.
 *
 * @param torqueTenths 0: the line is slack; k: above (k − 1)/10 up to k/10 of the rated torque; {@link #MOST_TORQUE}: above that
 * @param speedTenths k: from k/10 to below (k + 1)/10 of the rated speed; {@link #MOST_SPEED}: from there on
 * @param nanos of time
 */
public record TorqueSpeedCell(int torqueTenths, int speedTenths, long nanos) {
    /** Above twice the rated torque. */
    public static final int MOST_TORQUE = 21;

    /** From 1.6 times the rated speed on. */
    public static final int MOST_SPEED = 16;

    static int torqueClass(double share) {
        double tenths = share * 10;
        if (tenths <= 0 || tenths > MOST_TORQUE - 1) {
            return tenths <= 0 ? 0 : MOST_TORQUE;
        }
        int whole = (int) tenths;
        return whole < tenths ? whole + 1 : whole;
    }

    /** @param share 0 or more */
    static int speedClass(double share) {
        return Math.min(MOST_SPEED, (int) (share * 10));
    }
}
