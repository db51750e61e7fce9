package tautlog.logger.simulate.physics;

import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;

/** A log at the end of the line: mass, the ground under it, stumps in its way, something that holds it back. */
public final class DraggedLog {
    /** Standard gravity, ISO 80000-3. */
    static final double GRAVITY = 9.80665;

    private final double mass;
    private final Ground ground;
    private final Deque<Stump> stumps;
    private double heldNewtons;
    private double stumpPush;
    private double liftingPush;
    private boolean touching;
    double metres;
    double speed;

    /**
     * @param mass kg
     * @param metres distance from the winch along the path
     * @param stumps in its way
     */
    public DraggedLog(double mass, double metres, Ground ground, List<Stump> stumps) {
        this.mass = mass;
        this.metres = metres;
        this.ground = ground;
        this.stumps = new ArrayDeque<>(stumps.stream()
                .sorted(Comparator.comparingDouble(Stump::at).reversed())
                .toList());
    }

    /** Something holds the log, up to a force, until the force is reached once: wedged between stems, frozen in. */
    public void hold(double newtons) {
        heldNewtons = newtons;
    }

    /** Works the log loose: nothing holds it but the ground. */
    public void release() {
        heldNewtons = 0;
    }

    public void setSpeed(double metresPerSecond) {
        speed = metresPerSecond;
    }

    public double mass() {
        return mass;
    }

    /** Distance from the winch along the path, m. */
    public double metres() {
        return metres;
    }

    /** m/s, away from the winch when positive. */
    public double speed() {
        return speed;
    }

    /** Push of a stump, N; 0 without contact. */
    public double stumpPush() {
        return stumpPush;
    }

    /** Kinetic energy, J. */
    public double energy() {
        return 0.5 * mass * speed * speed;
    }

    /** The line, gravity, a stump and the ground act for {@code h} seconds. */
    void move(double h, double pull, WorldEvents events) {
        double weight = mass * GRAVITY;
        double push = meetStump(h, events);
        double grip = ground.friction(weight, metres, speed) + heldNewtons;
        double momentum = speed * mass + h * (ground.downhill(weight, metres) + push - pull);
        double left = Friction.leftOf(momentum, grip * h);
        if (left != 0 && heldNewtons > 0) {
            heldNewtons = 0;
        }
        speed = left / mass;
        metres += speed * h;
    }

    private double meetStump(double h, WorldEvents events) {
        Stump next = stumps.peekFirst();
        stumpPush = 0;
        if (next == null || metres >= next.at()) {
            touching = false;
            liftingPush = 0;
            return 0;
        }
        if (!touching) {
            touching = true;
            events.stumpMet(next, -speed);
        }
        stumpPush = Stump.push(next.at() - metres, speed);
        liftingPush += (stumpPush - liftingPush) * (h / Stump.LIFT_SECONDS);
        if (liftingPush >= next.hopNewtons()) {
            events.stumpHopped(next, stumpPush);
            clearStump();
        }
        return stumpPush;
    }

    /** The butt is past the next stump: it hopped over, or somebody worked it round. */
    public void clearStump() {
        stumps.pollFirst();
        touching = false;
        liftingPush = 0;
    }
}
