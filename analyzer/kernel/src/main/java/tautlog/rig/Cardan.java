package tautlog.rig;

/**
 * A single universal joint: how the speed behind it swings, twice a turn.
 *
 * <p>Statics of the joint; angles in degrees. A speed sensor behind a joint sees this swing, which is no fault.
 */
public final class Cardan {
    private Cardan() {}

    /**
     * Output speed / input speed: cos β / (1 − sin²β cos²θ).
     *
     * @param jointDegrees β, angle between the two shafts, 0 or more and below 90
     * @param inputDegrees θ, of the input yoke; at 0 it lies in the plane of the two shafts
     */
    public static double ratio(double jointDegrees, double inputDegrees) {
        double sine = Math.sin(Math.toRadians(jointDegrees));
        double cosine = Math.cos(Math.toRadians(inputDegrees));
        return Math.cos(Math.toRadians(jointDegrees)) / (1 - sine * sine * cosine * cosine);
    }

    /** Greatest − least of {@link #ratio} over a turn: 1/cos β − cos β. */
    public static double nonUniformity(double jointDegrees) {
        double cosine = Math.cos(Math.toRadians(jointDegrees));
        return 1 / cosine - cosine;
    }
}
