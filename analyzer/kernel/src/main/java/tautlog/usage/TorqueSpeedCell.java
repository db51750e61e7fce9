package tautlog.usage;

/**
 * Time spent at a torque and a speed of the shaft, both as shares of its rating.
 *
 * @param torqueTenths 0: none; k: above (k − 1)/10 up to k/10 of the rated torque; {@link #MOST_TORQUE}: above that
 * @param speedTenths k: from k/10 to below (k + 1)/10 of the rated speed; {@link #MOST_SPEED}: from there on
 * @param nanos of time
 */
public record TorqueSpeedCell(int torqueTenths, int speedTenths, long nanos) {
    /** Above twice the rated torque. */
    public static final int MOST_TORQUE = 21;

    /** From 1.6 times the rated speed on. */
    public static final int MOST_SPEED = 16;

    static int torqueClass(double share) {
        return share <= 0 ? 0 : (int) Math.min(MOST_TORQUE, Math.ceil(share * 10));
    }

    static int speedClass(double share) {
        return (int) Math.min(MOST_SPEED, Math.floor(share * 10));
    }
}
