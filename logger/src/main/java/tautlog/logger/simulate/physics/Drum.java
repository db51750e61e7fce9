package tautlog.logger.simulate.physics;

/**
 * The winch: gear, clutch, brake, and a drum on which the rope lies in layers.
 *
 * <p>Radius of layer n: barrel radius + (n − 0.5) · rope diameter; the pull falls as the radius grows. Turning positive
 * winds in. Wraps in a layer, inertia and the drag of the free drum: chosen, no source. Clutch and brake are no switches: the
 * clutch comes to carry its torque as it is engaged, the brake can be eased.
 */
public final class Drum {
    private static final double STATIC_OVER_KINETIC = 1.1;

    private final double barrelRadius;
    private final double ropeDiameter;
    private final double ratio;
    private final double efficiency;
    private final double inertia;
    private final double freeDragTorque;
    private final double wrapsPerLayer;
    private final double ropeLength;
    private final double brakeTorque;
    private double clutchTorque;
    private double clutchRise = Double.POSITIVE_INFINITY;
    private double carried;
    private double braking;
    private double brakeEasingSeconds;
    private double clutchEasingSeconds;
    private double radius;
    private int layer;
    private double layerFrom;
    private double layerTo;
    private boolean clutchOn;
    private boolean brakeOn;
    private boolean locked;
    double radPerS;

    /**
     * @param size what does not change
     * @param clutchTorque that the clutch carries while it slips, N·m at the drum
     * @param brakeTorque that the brake holds, N·m at the drum
     */
    public Drum(Size size, double clutchTorque, double brakeTorque) {
        barrelRadius = size.barrelDiameter() / 2;
        ropeDiameter = size.ropeDiameter();
        ratio = size.ratio();
        efficiency = size.efficiency();
        inertia = size.inertia();
        freeDragTorque = size.freeDragTorque();
        wrapsPerLayer = size.wrapsPerLayer();
        ropeLength = size.ropeLength();
        this.clutchTorque = clutchTorque;
        this.brakeTorque = brakeTorque;
        spool(ropeLength);
    }

    /**
     * @param barrelDiameter m
     * @param ropeDiameter m
     * @param ratio shaft turns per drum turn
     * @param efficiency of the gear, above 0 to 1
     * @param inertia kg·m² at the drum
     * @param freeDragTorque N·m at the drum that keeps the free drum from overrunning
     * @param wrapsPerLayer turns of rope side by side
     * @param ropeLength m, all of it
     */
    public record Size(
            double barrelDiameter,
            double ropeDiameter,
            double ratio,
            double efficiency,
            double inertia,
            double freeDragTorque,
            double wrapsPerLayer,
            double ropeLength) {}

    /** Engages the clutch, which then carries more and more, or opens it. */
    public void clutch(boolean on) {
        if (on != clutchOn) {
            carried = 0;
            clutchEasingSeconds = 0;
        }
        clutchOn = on;
        locked = locked && on;
    }

    /** Puts the brake on, or lets go of it at once. */
    public void brake(boolean on) {
        brakeOn = on;
        braking = on ? brakeTorque : 0;
        brakeEasingSeconds = 0;
    }

    /** Eases the brake: what it holds falls to a third in {@code seconds}, again and again. */
    public void easeBrake(double seconds) {
        brakeEasingSeconds = seconds;
    }

    /** Lets the engaged clutch slip more and more: what it carries falls to a third in {@code seconds}, again and again. */
    public void easeClutch(double seconds) {
        clutchEasingSeconds = seconds;
    }

    /** Adjusts the clutch: what it carries at most while it slips, N·m at the drum. */
    public void setClutchTorque(double newtonMetres) {
        clutchTorque = newtonMetres;
        carried = Math.min(carried, newtonMetres);
    }

    /** How fast an engaged clutch comes to carry that, N·m/s at the drum; at once until this is said. */
    public void setClutchRise(double newtonMetresPerSecond) {
        clutchRise = newtonMetresPerSecond;
    }

    /** True when the engaged clutch carries at least what {@code tension} (N) asks, so that the brake may go. */
    public boolean isCarrying(double tension) {
        return clutchOn && carried >= tension * radius;
    }

    public boolean isClutchOn() {
        return clutchOn;
    }

    public boolean isBrakeOn() {
        return brakeOn;
    }

    /** True while the clutch carries the load without slipping. */
    public boolean isLocked() {
        return locked;
    }

    /** The layer on which the rope runs on, 1 for the first. */
    public int layer() {
        return layer;
    }

    /** Radius on which the rope runs on, m. */
    public double radius() {
        return radius;
    }

    /** Speed of the rope, m/s, positive when winding in. */
    public double ropeSpeed() {
        return radPerS * radius;
    }

    /** Line pull (N) when the shaft gives {@code shaftTorque} (N·m) in the present layer. */
    public double pullFrom(double shaftTorque) {
        return shaftTorque * ratio * efficiency / radius;
    }

    /** Takes note of how much rope is off the drum (m), and so of the layer. */
    void ropeOut(double metres) {
        double on = ropeLength - metres;
        if (on < layerFrom || on > layerTo) {
            spool(on);
        }
    }

    private void spool(double metresOn) {
        double from = 0;
        int n = 1;
        while (true) {
            double r = barrelRadius + (n - 0.5) * ropeDiameter;
            double holds = wrapsPerLayer * 2 * Math.PI * r;
            if (metresOn <= from + holds) {
                layer = n;
                radius = r;
                layerFrom = n == 1 ? Double.NEGATIVE_INFINITY : from;
                layerTo = from + holds;
                return;
            }
            from += holds;
            n++;
        }
    }

    /** Line tension, clutch and brake act for {@code h} seconds. */
    void turn(double h, double tension, Engine engine) {
        radPerS -= h * tension * radius / inertia;
        if (clutchOn) {
            moveClutch(h);
            closeClutch(h, engine);
        }
        if (brakeEasingSeconds > 0) {
            braking -= braking * (h / brakeEasingSeconds);
        }
        double drag = brakeOn ? braking : clutchOn ? 0 : freeDragTorque;
        radPerS = Friction.leftOf(radPerS * inertia, drag * h) / inertia;
    }

    private void moveClutch(double h) {
        carried = clutchEasingSeconds > 0
                ? carried - carried * (h / clutchEasingSeconds)
                : Math.min(clutchTorque, carried + h * clutchRise);
    }

    private void closeClutch(double h, Engine engine) {
        double slip = engine.radPerS / ratio - radPerS;
        // losses: the shaft gives more than arrives when it drives, gets less back when it is driven
        double loss = slip >= 0 ? 1 / efficiency : efficiency;
        double alike = slip / (1 / inertia + loss / (engine.inertia() * ratio * ratio));
        double limit = carried * h * (locked ? STATIC_OVER_KINETIC : 1);
        double impulse = alike - Friction.leftOf(alike, limit);
        locked = impulse == alike;
        radPerS += impulse / inertia;
        engine.give(impulse * loss / ratio);
    }
}
