package tautlog.logger.simulate;

import java.util.SplittableRandom;
import java.util.function.BooleanSupplier;
import tautlog.logger.simulate.instrument.ByteSink;
import tautlog.logger.simulate.instrument.LoadCell;
import tautlog.logger.simulate.instrument.SimulatedInstrument;
import tautlog.logger.simulate.physics.World;

/**
 * World, witness and instrument, stepped together.
 *
 * <p>Pure: the same scenario, seed and step of the sink's calls give the same bytes and the same truth. One thread.
 */
public final class Simulation {
    private static final int RATE_HERTZ = 500;
    private static final int PULSES_PER_REVOLUTION = 6;
    private static final double JOINT_DEGREES = 12;

    private final Truth truth;
    private final Witness witness;
    private final World world;
    private final SimulatedInstrument instrument;
    private final SplittableRandom random;

    private Simulation(Scenario scenario, long seed, ByteSink sink) {
        random = new SplittableRandom(seed);
        truth = new Truth(scenario.id(), seed, LoadCell.NEWTONS_PER_COUNT, LoadCell.ZERO_COUNTS);
        instrument = new SimulatedInstrument(RATE_HERTZ, PULSES_PER_REVOLUTION, JOINT_DEGREES, random.nextLong(), sink);
        truth.boots.add(instrument.identity());
        witness = new Witness(truth, this::moment);
        world = new World(Gear.engine(), Gear.drum(), witness);
    }

    /** Plays a scenario from beginning to end into {@code sink}. */
    public static Truth play(Scenario scenario, long seed, ByteSink sink) {
        Simulation simulation = new Simulation(scenario, seed, sink);
        scenario.play(new Crew(simulation));
        simulation.witness.over(simulation.world);
        simulation.truth.samplesSent = simulation.instrument.samplesSent();
        simulation.truth.framesSent = simulation.instrument.framesSent();
        simulation.truth.framesDamaged = simulation.instrument.framesDamaged();
        return simulation.truth;
    }

    Truth.Moment moment(double seconds) {
        return new Truth.Moment(Math.rint(seconds * 1e4) / 1e4, truth.boots.size() - 1, instrument.numberAt(seconds));
    }

    World world() {
        return world;
    }

    Witness witness() {
        return witness;
    }

    SimulatedInstrument instrument() {
        return instrument;
    }

    Truth truth() {
        return truth;
    }

    SplittableRandom random() {
        return random;
    }

    private void stepTowards(long until) {
        if (until - world.steps() >= World.STRIDE && world.isAtRest()) {
            world.stride();
        } else {
            world.step();
        }
        witness.look(world);
        instrument.look(world);
    }

    void advance(double seconds) {
        long until = world.steps() + Math.round(seconds * World.STEPS_PER_SECOND);
        while (world.steps() < until) {
            stepTowards(until);
        }
    }

    /**
     * Goes on until something is so.
     *
     * @return false if it was not within {@code longest} seconds
     */
    boolean advanceUntil(BooleanSupplier something, double longest) {
        long until = world.steps() + Math.round(longest * World.STEPS_PER_SECOND);
        while (!something.getAsBoolean()) {
            if (world.steps() >= until) {
                return false;
            }
            stepTowards(until);
        }
        return true;
    }
}
