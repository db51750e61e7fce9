package tautlog.logger.simulate.physics;

/**
 * The tractor's engine as the driveline feels it: everything is referred to the shaft.
 *
 * <p>A governor with droop and a lag opens the throttle as the speed falls; beyond full throttle the engine lugs along its
 * torque curve, and below its least speed it dies. Shapes and figures: chosen, typical of a small tractor, no source.
 */
public final class Engine {
    /** Below this the engine dies: about 500 rpm at the crankshaft with a gearing of 1 : 3.8. */
    private static final double LEAST_RAD_PER_S = rpm(130);

    private static final double RATED_RAD_PER_S = rpm(540);
    private static final double DROOP = 0.08;
    private static final double LAG_SECONDS = 0.15;
    private static final double TORQUE_RISE = 0.12;
    private static final double PEAK_AT = 0.62;
    private static final double FRICTION_SHARE = 0.06;

    private final double inertia;
    private double maxTorque;
    private double setRadPerS;
    private double throttle;
    private boolean running;
    private boolean cranking;
    double radPerS;

    /**
     * @param inertia of everything that turns with the shaft, kg·m² at the shaft
     * @param maxTorque at rated speed, N·m at the shaft
     */
    public Engine(double inertia, double maxTorque) {
        this.inertia = inertia;
        this.maxTorque = maxTorque;
    }

    static double rpm(double rpm) {
        return rpm * Math.PI / 30;
    }

    /** Starts the engine; it runs up to {@code setRpm} of the shaft in a second or two. */
    public void start(double setRpm) {
        running = true;
        cranking = radPerS < LEAST_RAD_PER_S;
        set(setRpm);
    }

    public void stop() {
        running = false;
        cranking = false;
    }

    /** Sets the speed that the governor holds, in rpm of the shaft. */
    public void set(double setRpm) {
        setRadPerS = rpm(setRpm);
    }

    /** A clogged filter, or a healthy engine again: what it gives at rated speed, N·m at the shaft. */
    public void setMaxTorque(double newtonMetres) {
        maxTorque = newtonMetres;
    }

    public boolean isRunning() {
        return running;
    }

    public boolean isCranking() {
        return cranking;
    }

    /** Speed of the shaft, rpm. */
    public double shaftRpm() {
        return radPerS * 30 / Math.PI;
    }

    /** Speed that the governor holds, rpm. */
    public double setRpm() {
        return setRadPerS * 30 / Math.PI;
    }

    /** 0 to 1; at 1 the engine gives all it has at this speed. */
    public double throttle() {
        return throttle;
    }

    double inertia() {
        return inertia;
    }

    /** Fuel and inner friction act for {@code h} seconds. */
    void turn(double h) {
        double open = running ? (setRadPerS - radPerS) / (DROOP * setRadPerS) : 0;
        open = open < 0 ? 0 : open > 1 ? 1 : open;
        throttle += (open - throttle) * (h / LAG_SECONDS);
        double torque = running ? throttle * fullTorque() : 0;
        radPerS += h * torque / inertia;
        double drag = FRICTION_SHARE * maxTorque * (running ? 1 : 3);
        radPerS = Friction.leftOf(radPerS * inertia, drag * h) / inertia;
        liveOrDie();
    }

    private void liveOrDie() {
        if (cranking && radPerS > 1.3 * LEAST_RAD_PER_S) {
            cranking = false;
        }
        if (running && !cranking && radPerS < LEAST_RAD_PER_S) {
            running = false;
        }
    }

    private double fullTorque() {
        double x = radPerS / RATED_RAD_PER_S;
        if (cranking && x < PEAK_AT) {
            return 0.6 * maxTorque; // starter, then first firing
        }
        double off = (x - PEAK_AT) / (1 - PEAK_AT);
        double curve = 1 + TORQUE_RISE * (1 - off * off);
        return curve > 0 ? curve * maxTorque : 0;
    }

    /** The driveline takes {@code impulse} (N·m·s) from the shaft. */
    void give(double impulse) {
        radPerS -= impulse / inertia;
    }
}
