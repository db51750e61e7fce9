package tautlog.logger.simulate.instrument;

import java.util.Random;

/**
 * A sensor that sees targets pass on the shaft behind a cardan joint.
 *
 * <p>The joint at angle β makes an even turn uneven, twice a revolution: tan θ2 = tan θ1 / cos β, so ω2/ω1 =
 * cos β / (1 − sin²β cos²θ1), between cos β and 1 / cos β. The targets sit a little off their even places.
 */
public final class PulseSensor {
    private final double[] turnsAt;
    private long passed;
    private double nextAtTurns;

    /**
     * @param pulsesPerRevolution 1 or more
     * @param jointDegrees β, 0 to below 45
     * @param unevenness greatest offset of a target, as a part of the distance between two, below 0.5
     */
    public PulseSensor(int pulsesPerRevolution, double jointDegrees, double unevenness, long seed) {
        Random random = new Random(seed);
        turnsAt = new double[pulsesPerRevolution];
        for (int i = 0; i < pulsesPerRevolution; i++) {
            double offset = (2 * random.nextDouble() - 1) * unevenness;
            turnsAt[i] = inTurns((i + 0.5 + offset) / pulsesPerRevolution, StrictMath.toRadians(jointDegrees));
        }
        nextAtTurns = turnsAt[0];
    }

    /** The turn (0 to 1) before the joint at which the turn behind it is {@code behind}. */
    private static double inTurns(double behind, double joint) {
        double half = Math.floor(behind * 2 + 0.5) / 2; // tan repeats each half turn; near this one it is continuous
        double angle = (behind - half) * 2 * Math.PI;
        return half + StrictMath.atan(StrictMath.tan(angle) * StrictMath.cos(joint)) / (2 * Math.PI);
    }

    int pulsesPerRevolution() {
        return turnsAt.length;
    }

    /** Turn of the tractor's shaft, since the start, at which the next pulse comes. */
    public double nextAtTurns() {
        return nextAtTurns;
    }

    /** Takes the next pulse. */
    public void pass() {
        passed++;
        long wholeTurns = passed / turnsAt.length;
        nextAtTurns = wholeTurns + turnsAt[(int) (passed % turnsAt.length)];
    }
}
