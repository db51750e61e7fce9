package tautlog.logger.simulate.physics;

import java.util.SplittableRandom;

/**
 * The ground along the log's path: uneven, so that friction and slope change from hand's breadth to hand's breadth.
 *
 * <p>Friction falls from its static to its kinetic value as the log gets going (Stribeck), and grows again with speed as
 * the log ploughs: μ(v) = (μk + (μs − μk) / (1 + (v / vs)²)) · (1 + p · v). No table of such figures is published; the
 * values used are common practice, no source.
 */
public final class Ground {
    private static final double SPACING_METRES = 0.05;
    private static final int POINTS = 4096;
    /**
     * Chosen: so wide that soil gives way gradually. Were it narrow, friction would fall with speed faster than rope and ploughing
     * damp, and every log would stick and slip at the line's own frequency, which no crew knows.
     */
    private static final double STRIBECK_M_PER_S = 0.25;

    /** Chosen: at the winch's 0.33 m/s soil that is pushed aside adds a fifth to the friction. */
    private static final double PLOUGHING_PER_M_PER_S = 0.6;

    /** Over this length the slope runs out into the level. Chosen: half a log. */
    private static final double EDGE_METRES = 2;

    private final double staticFriction;
    private final double kineticFriction;
    private final double levelWithin;
    private final double slopeSine;
    private final double slopeCosine;
    private final float[] roughness = new float[POINTS];

    /**
     * @param staticFriction μs
     * @param kineticFriction μk, at most μs
     * @param slopeDegrees positive when the pull goes uphill
     * @param levelWithin distance from the winch within which it is level, m
     * @param unevenness 0 for a plane; 0.2 lets the friction swing by about a fifth
     * @param seed of the unevenness
     */
    public Ground(
            double staticFriction,
            double kineticFriction,
            double slopeDegrees,
            double levelWithin,
            double unevenness,
            long seed) {
        this.staticFriction = staticFriction;
        this.kineticFriction = kineticFriction;
        this.levelWithin = levelWithin;
        slopeSine = StrictMath.sin(Math.toRadians(slopeDegrees));
        slopeCosine = StrictMath.cos(Math.toRadians(slopeDegrees));
        roughen(new SplittableRandom(seed), unevenness);
    }

    private void roughen(SplittableRandom random, double unevenness) {
        java.util.Arrays.fill(roughness, 1);
        for (int stride = 64; stride >= 2; stride /= 2) { // 3.2 m to 0.1 m, finer is fainter
            double amount = unevenness * StrictMath.sqrt(stride / 64.0);
            double left = amount * (2 * random.nextDouble() - 1);
            for (int i = 0; i < POINTS; i += stride) {
                double right = amount * (2 * random.nextDouble() - 1);
                for (int k = 0; k < stride; k++) {
                    roughness[i + k] += (float) (left + (right - left) * k / stride);
                }
                left = right;
            }
        }
    }

    /** How much rougher than usual it is at {@code metres}: about 1. */
    private double roughnessAt(double metres) {
        double at = Math.abs(metres) / SPACING_METRES;
        int i = (int) at;
        double part = at - i;
        float here = roughness[i & (POINTS - 1)];
        float next = roughness[(i + 1) & (POINTS - 1)];
        double rough = here + (next - here) * part;
        return rough < 0.2 ? 0.2 : rough;
    }

    /** Friction (N) that a log of {@code weight} (N) meets at most, at a place and a speed. */
    double friction(double weight, double metres, double speed) {
        double x = speed / STRIBECK_M_PER_S;
        double mu = kineticFriction + (staticFriction - kineticFriction) / (1 + x * x);
        double cosine = 1 - (1 - slopeCosine) * steepness(metres);
        return mu * (1 + PLOUGHING_PER_M_PER_S * Math.abs(speed)) * weight * cosine * roughnessAt(metres);
    }

    /** What gravity pulls along the path, away from the winch when positive, N. */
    double downhill(double weight, double metres) {
        return weight * slopeSine * steepness(metres);
    }

    /** 0 where it is level, 1 on the slope; a log is longer than the edge is sharp. */
    private double steepness(double metres) {
        double beyond = (metres - levelWithin) / EDGE_METRES;
        return beyond <= 0 ? 0 : beyond >= 1 ? 1 : beyond;
    }
}
