package tautlog.logger.simulate.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

final class WorldTest {
    private static final double STIFFNESS = 150_000;
    private static final double METRES = 30;
    private static final double MASS = 1_000;
    private static final double NEVER = Double.POSITIVE_INFINITY;

    private final QuietEvents events = new QuietEvents();

    /** A drum that nothing turns, a line of 150 kN/m without damping. */
    private World held(Rigging rigging, DraggedLog log, double slackMetres) {
        Drum.Size size = new Drum.Size(0.18, 0.011, 14, 0.75, 1.6, 5, 18, 50);
        World world = new World(new Engine(9, 500), new Drum(size, 4_000, 1e9), events);
        world.drum().brake(true);
        world.withoutDamping();
        world.hookUp(rigging, log, slackMetres);
        return world;
    }

    private static Rigging rigging(Part... parts) {
        return new Rigging("test", 1, List.of(parts), STIFFNESS * METRES, 0, 1, NEVER);
    }

    private static DraggedLog logOnIce(double slopeDegrees) {
        return new DraggedLog(MASS, METRES, new Ground(0, 0, slopeDegrees, 0, 0, 1), List.of());
    }

    private static double peakWithin(World world, double seconds) {
        double peak = 0;
        for (int i = 0; i < seconds * World.STEPS_PER_SECOND; i++) {
            world.step();
            peak = Math.max(peak, world.tension());
        }
        return peak;
    }

    /**
     * F = F0 + sqrt(F0² + k m v²): a mass taken up by a spring while F0 pulls steadily (elementary, energy; textbooks on
     * impact). Printed value for v = 1 m/s, k = 150 kN/m, m = 1000 kg, F0 = 0: 12,247 N. Half a percent for the time step.
     */
    @Test
    void aSnapReachesWhatTheEnergyFormulaSays() {
        DraggedLog log = logOnIce(0);
        World world = held(rigging(), log, 0);
        log.setSpeed(1);
        assertEquals(12_247, peakWithin(world, 0.5), 12_247 * 0.005);
    }

    @Test
    void aSnapOnASlopeReachesWhatTheEnergyFormulaSays() {
        for (double speed : new double[] {0.3, 1, 2.5}) {
            DraggedLog log = logOnIce(20);
            World world = held(rigging(), log, 0);
            log.setSpeed(speed);
            double steady = MASS * 9.80665 * Math.sin(Math.toRadians(20));
            double expected = steady + Math.sqrt(steady * steady + STIFFNESS * MASS * speed * speed);
            assertEquals(expected, peakWithin(world, 0.6), expected * 0.005);
        }
    }

    /** A slack line costs the log its fall: v² = 2 g sin α · slack. Impact factor 1 + sqrt(1 + 2 h / d), textbooks. */
    @Test
    void aSlackLineOnASlopeAddsTheFall() {
        double slack = 0.5;
        World world = held(rigging(), logOnIce(20), slack);
        double steady = MASS * 9.80665 * Math.sin(Math.toRadians(20));
        double softer = STIFFNESS * METRES / (METRES + slack);
        double factor = 1 + Math.sqrt(1 + 2 * slack / (steady / softer));
        assertEquals(steady * factor, peakWithin(world, 2), steady * factor * 0.005);
    }

    /** Suddenly applied load: exactly twice the static one (textbooks: factor 1 + sqrt(1 + 0) = 2). */
    @Test
    void aSuddenlyAppliedLoadCountsTwice() {
        World world = held(rigging(), logOnIce(20), 0);
        double steady = MASS * 9.80665 * Math.sin(Math.toRadians(20));
        assertEquals(2 * steady, peakWithin(world, 0.6), steady * 0.01);
    }

    @Test
    void withoutDampingTheEnergyNeitherGrowsNorFades() {
        DraggedLog log = logOnIce(0);
        World world = held(rigging(), log, 0);
        log.setSpeed(1);
        double atFirst = world.energy();
        for (int i = 0; i < 2_000; i++) { // in the line and back, then away towards the winch
            world.step();
            assertEquals(atFirst, world.energy(), atFirst * 0.005);
        }
    }

    @Test
    void onTheGroundTheEnergyNeverGrows() {
        DraggedLog log = new DraggedLog(MASS, METRES, new Ground(0.1, 0.08, 0, 0, 0.2, 3), List.of());
        World world = held(rigging(), log, 0);
        log.setSpeed(2);
        double least = world.energy();
        for (int i = 0; i < 5 * World.STEPS_PER_SECOND; i++) {
            world.step();
            assertTrue(world.energy() <= least * 1.005 + 1e-9, "at step " + i);
            least = Math.min(least, world.energy());
        }
        assertTrue(least < 0.2 * 0.5 * MASS * 4);
    }

    /** Coulomb: nothing moves below μs · N, on a slope less the part of the weight that pulls. */
    @Test
    void aLogStaysWhereItIsBelowStaticFrictionAndMovesAbove() {
        double grip = 0.6 * MASS * 9.80665;
        assertEquals(METRES, metresAfterPullOf(0.99 * grip), 0.0);
        assertTrue(metresAfterPullOf(1.01 * grip) < METRES);
    }

    private double metresAfterPullOf(double newtons) {
        double stretch = METRES * newtons / (STIFFNESS * METRES + newtons);
        DraggedLog log = new DraggedLog(MASS, METRES, new Ground(0.6, 0.5, 0, 0, 0, 1), List.of());
        World world = held(rigging(), log, -stretch);
        peakWithin(world, 1);
        return log.metres();
    }

    @Test
    void theWeakestPartLetsGoAtItsStrengthAndTheLineIsSlackFromThenOn() {
        DraggedLog log = logOnIce(0);
        World world = held(rigging(Part.of("rope", 1, 60_000), Part.of("choker", 1, 9_000)), log, 0);
        log.setSpeed(1);
        double peak = peakWithin(world, 0.5);
        assertEquals(List.of("parted choker"), events.seen);
        assertEquals(9_000, peak, 100); // less than a step's rise below
        assertTrue(world.isParted());
        assertEquals(0, world.tension());
    }

    @Test
    void aStrapThatLetsGoFreesTheLineOnlyForAWhile() {
        DraggedLog log = logOnIce(0);
        World world = held(rigging(new Part("strap", 2, 12_000, 1.5), Part.of("choker", 1, 60_000)), log, 0);
        log.setSpeed(1);
        assertEquals(6_000, peakWithin(world, 0.1), 100); // multiple 2: half of its strength in the line
        assertEquals(List.of("parted strap"), events.seen);
        assertEquals(0, world.tension());
        log.setSpeed(1);
        assertTrue(peakWithin(world, 3) > 5_000, "the line comes tight again");
    }

    @Test
    void aButtHopsOverAStumpThatItPushesHardEnoughAndStandsAgainstAHigherOne() {
        DraggedLog log = new DraggedLog(
                MASS, METRES, new Ground(0, 0, 0, 0, 0, 1), List.of(new Stump(29.9, 5_000), new Stump(29.5, NEVER)));
        World world = held(rigging(), log, -0.8); // stretched far: the log comes
        peakWithin(world, 2);
        assertEquals(List.of("met", "hopped", "met"), events.seen.subList(0, 3));
        assertTrue(log.metres() > 29.3);
    }
}
