package tautlog.logger.simulate.physics;

import java.util.Optional;

/**
 * The line from drum to log: springs in series that can pull but not push.
 *
 * <p>1/k = length / EA of the rope + the compliance of all else. A little damping inside the rope and chain. The line has
 * no mass: nothing travels along it, its ends feel the same force but for the loss in a sheave.
 */
final class Line {
    /**
     * Damping / stiffness, s: 5 % of critical for a log of a tonne on 30 m of rope (187 kN/m). Chosen: strands that rub in the rope,
     * links that shift, a chain that bites into bark; no source.
     */
    static final double USUAL_DAMPING_SECONDS = 0.007_5;

    private static final double SHEAVE_BLEND_M_PER_S = 0.02;

    private final double dampingSeconds;
    private final Rigging rigging;
    private final double letsGoAt;
    private boolean parted;
    private double stretch;
    double ropeOut;
    double tension;

    Line(Rigging rigging, double ropeOut, double dampingSeconds) {
        this.rigging = rigging;
        this.ropeOut = ropeOut;
        this.dampingSeconds = dampingSeconds;
        double weakest = rigging.slipsAt();
        for (Part part : rigging.parts()) {
            weakest = Math.min(weakest, part.strengthNewtons() / part.multiple());
        }
        letsGoAt = weakest;
    }

    Rigging rigging() {
        return rigging;
    }

    boolean isParted() {
        return parted;
    }

    void part() {
        parted = true;
        tension = 0;
    }

    double stiffness() {
        return 1 / (ropeOut / rigging.ropeStiffness() + rigging.otherCompliance());
    }

    /** Energy in the stretched line, J. */
    double energy() {
        return tension > 0 ? 0.5 * stiffness() * stretch * stretch : 0;
    }

    /** Stretches the line between its ends; true when something must let go now. */
    boolean stretch(double pathMetres, double ropeSpeed, double logSpeed) {
        stretch = pathMetres - ropeOut;
        if (parted || stretch <= 0) {
            tension = 0;
            return false;
        }
        double pull = stiffness() * (stretch + dampingSeconds * (ropeSpeed + logSpeed));
        tension = pull > 0 ? pull : 0;
        return tension >= letsGoAt;
    }

    /** Tension behind the block, at the log. */
    double tensionAtLog(double ropeSpeed) {
        double loss = 1 - rigging.sheaveEfficiency();
        double way = ropeSpeed / SHEAVE_BLEND_M_PER_S;
        way = way > 1 ? 1 : way < -1 ? -1 : way;
        return tension * (1 - loss * way);
    }

    /** The part whose strength is reached, the choker's grip on the log apart. */
    Optional<Part> weakest() {
        return rigging.parts().stream()
                .filter(p -> tension * p.multiple() >= p.strengthNewtons())
                .findFirst();
    }
}
