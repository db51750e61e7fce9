package tautlog.logger.simulate.physics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

final class DrumTest {
    private static final double FIRST_RADIUS = 0.1;
    /** The slope of the published figures below: rope diameter / first radius. */
    private static final double ROPE_DIAMETER = 0.1007 * FIRST_RADIUS;

    /**
     * Line pull by layer of a 20,000 lb winch: 20000, 18173, 16663, 15361 lb. Source: US Army TM 9-2320-338-10, winch
     * data; within 0.1 % of 1 / (1 + 0.1007 (n − 1)), which is R1 / Rn.
     */
    @Test
    void thePullFallsFromLayerToLayerAsPublished() {
        double[] published = {20_000, 18_173, 16_663, 15_361};
        double wraps = 10;
        double length = lengthOfLayers(4, wraps);
        Drum drum = new Drum(
                new Drum.Size(2 * FIRST_RADIUS - ROPE_DIAMETER, ROPE_DIAMETER, 14, 0.75, 1, 1, wraps, length), 1, 1);
        for (int layer = 1; layer <= 4; layer++) {
            drum.ropeOut(length - lengthOfLayers(layer, wraps) + 1);
            assertEquals(layer, drum.layer());
            double share = drum.pullFrom(300) / (300 * 14 * 0.75 / FIRST_RADIUS);
            assertEquals(published[layer - 1] / 20_000, share, 0.001);
        }
    }

    private static double lengthOfLayers(int layers, double wraps) {
        double length = 0;
        for (int n = 1; n <= layers; n++) {
            length += wraps * 2 * Math.PI * (FIRST_RADIUS + (n - 1) * ROPE_DIAMETER);
        }
        return length;
    }

    @Test
    void theBrakeHoldsUpToItsTorqueAndSlipsBeyond() {
        assertEquals(0, speedAfterPullOf(0.99 * 1_000 / FIRST_RADIUS), 0.0);
        assertTrue(speedAfterPullOf(1.01 * 1_000 / FIRST_RADIUS) < 0);
    }

    private static double speedAfterPullOf(double tension) {
        Drum drum = new Drum(new Drum.Size(2 * FIRST_RADIUS - 0.01, 0.01, 14, 0.75, 1, 1, 10_000, 50), 1, 1_000);
        drum.brake(true);
        Engine engine = new Engine(9, 500);
        for (int i = 0; i < 1_000; i++) {
            drum.turn(World.STEP_SECONDS, tension, engine);
        }
        return drum.ropeSpeed();
    }

    @Test
    void aClosedClutchTurnsTheDrumWithTheShaft() {
        Drum drum = new Drum(new Drum.Size(0.19, 0.01, 14, 0.75, 1.6, 1, 10_000, 50), 4_000, 1);
        Engine engine = new Engine(9, 500);
        engine.start(400);
        drum.clutch(true);
        for (int i = 0; i < 5 * World.STEPS_PER_SECOND; i++) {
            engine.turn(World.STEP_SECONDS);
            drum.turn(World.STEP_SECONDS, 10_000, engine);
        }
        assertEquals(engine.radPerS / 14, drum.radPerS, 1e-9);
        assertEquals(400, engine.shaftRpm(), 0.08 * 400); // within the governor's droop
    }
}
