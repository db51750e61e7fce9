package tautlog.logger.simulate;

import java.util.SplittableRandom;
import java.util.function.BooleanSupplier;
import tautlog.logger.simulate.instrument.SimulatedInstrument;
import tautlog.logger.simulate.physics.DraggedLog;
import tautlog.logger.simulate.physics.Drum;
import tautlog.logger.simulate.physics.Engine;
import tautlog.logger.simulate.physics.Rigging;
import tautlog.logger.simulate.physics.World;

/** What the people do, one thing after the other; each call takes the time that it takes on the hill. */
final class Crew {
    private static final double WALK_M_PER_S = 0.9;
    /** Pull of the rope by itself: lying slack, and being carried out against the drum's drag. */
    private static final double LYING_NEWTONS = 40;

    private static final double CARRIED_NEWTONS = 95;

    /**
     * Chosen: some 1 kN in the line, enough to draw in a slack rope and to lay the choker on, too little to move a log.
     */
    private static final double TAKE_UP_TORQUE = 0.025 * Gear.CLUTCH_TORQUE;

    /** Chosen: a crew that feels for the load brings the pull up by some 7 kN a second. */
    private static final double CLUTCH_RISE = 700;

    /** Chosen: from the bang to the hand on the lever. */
    private static final double REACTION_SECONDS = 0.7;

    private static final double STANDING_M_PER_S = 0.01;
    private static final double TAUT_NEWTONS = 600;
    private static final double TAKE_UP_SECONDS = 60;
    /** Chosen: a hand that lets brake or clutch slip, so that a taut line eases over a second or two. */
    private static final double EASING_SECONDS = 0.4;

    private final Simulation simulation;
    private final World world;
    private final SimulatedInstrument instrument;

    Crew(Simulation simulation) {
        this.simulation = simulation;
        world = simulation.world();
        instrument = simulation.instrument();
    }

    SplittableRandom random() {
        return simulation.random();
    }

    World world() {
        return world;
    }

    double between(double least, double greatest) {
        return random().nextDouble(least, greatest);
    }

    void waitFor(double seconds) {
        simulation.advance(seconds);
    }

    void startEngine(double shaftRpm) {
        world.engine().start(shaftRpm);
        world.drum().brake(true);
        waitFor(4);
    }

    void stopEngine() {
        world.engine().stop();
        waitFor(6);
    }

    void throttle(double shaftRpm) {
        world.engine().set(shaftRpm);
        waitFor(1);
    }

    /** Lets the drum run free and carries the rope's end to {@code metres}. */
    void carryRopeTo(double metres) {
        world.drum().brake(false);
        world.drum().clutch(false);
        double way = metres - world.ropeOut();
        if (way > 0) {
            instrument.setDrag(CARRIED_NEWTONS + between(-25, 25));
            world.carryOut(WALK_M_PER_S);
            waitFor(way / WALK_M_PER_S);
            world.carryOut(0);
        }
        instrument.setDrag(LYING_NEWTONS + between(-10, 15));
        waitFor(0.5);
        world.drum().brake(true);
    }

    /** Carries the rope to the log, turns the hookup switch, chokes the log. */
    void choke(Rigging rigging, DraggedLog log) {
        double end = log.metres() + between(0.3, 1.2);
        if (world.ropeOut() > end + 1) {
            windInEmpty(end); // the last log came off far out
        }
        carryRopeTo(end);
        instrument.select(rigging.selector());
        waitFor(between(8, 25));
        world.hookUp(rigging, log, world.ropeOut() - log.metres());
        simulation.witness().hookedUp(world);
        waitFor(between(3, 10));
    }

    /** Winds in until the log is {@code metres} away, or for {@code longest} seconds; then the brake holds. */
    boolean windTo(double metres, double longest) {
        return windUntil(() -> logMetres() <= metres, longest);
    }

    /** Winds in until something is so, or for {@code longest} seconds; then the brake holds. */
    boolean windUntil(BooleanSupplier enough, double longest) {
        takeUp(enough);
        boolean done = simulation.advanceUntil(() -> enough.getAsBoolean() || mustStop(), longest);
        if (world.isParted()) {
            waitFor(REACTION_SECONDS);
        }
        stopDrum();
        return done && !mustStop();
    }

    /** Lets the clutch slip until the drum stands, so that log and rope come to rest together; then the brake holds. */
    private void stopDrum() {
        Drum drum = world.drum();
        if (world.tension() > TAUT_NEWTONS) {
            drum.setClutchTorque(world.tension() * drum.radius());
            drum.easeClutch(EASING_SECONDS);
            simulation.advanceUntil(() -> drum.ropeSpeed() < STANDING_M_PER_S, 3 * EASING_SECONDS);
        }
        drum.clutch(false);
        drum.brake(true);
    }

    /** Draws in what is slack, then lets clutch and brake change over without losing the load. */
    private void takeUp(BooleanSupplier enough) {
        Drum drum = world.drum();
        drum.setClutchRise(CLUTCH_RISE);
        drum.setClutchTorque(TAKE_UP_TORQUE);
        drum.clutch(true);
        if (world.tension() < TAUT_NEWTONS) {
            drum.brake(false);
            simulation.advanceUntil(
                    () -> world.tension() > TAUT_NEWTONS || enough.getAsBoolean() || mustStop(), TAKE_UP_SECONDS);
        }
        drum.setClutchTorque(Gear.CLUTCH_TORQUE);
        simulation.advanceUntil(() -> drum.isCarrying(world.tension()) || mustStop(), TAKE_UP_SECONDS);
        drum.brake(false);
    }

    private boolean mustStop() {
        return world.isParted() || !world.engine().isRunning();
    }

    private double logMetres() {
        return world.log().map(DraggedLog::metres).orElse(0.0);
    }

    /** Eases the brake and draws out {@code metres} of rope, so that the line goes slack. */
    void slacken(double metres) {
        world.drum().clutch(false);
        world.drum().easeBrake(EASING_SECONDS);
        waitFor(6 * EASING_SECONDS);
        drawOut(metres);
    }

    /** The same, but the brake is let go at once: the line springs back. */
    void letGo(double metres) {
        world.drum().clutch(false);
        world.drum().brake(false);
        waitFor(0.6);
        drawOut(metres);
    }

    private void drawOut(double metres) {
        world.drum().brake(false);
        world.carryOut(WALK_M_PER_S);
        waitFor(metres / WALK_M_PER_S);
        world.carryOut(0);
        world.drum().brake(true);
        waitFor(0.3);
    }

    /** Lets the line go slack and takes the choker off. */
    void unchoke() {
        slacken(0.5);
        unhook();
    }

    /** Lets the brake go all at once, in a hurry, and takes the choker off. */
    void unchokeInAHurry() {
        letGo(0.5);
        unhook();
    }

    private void unhook() {
        waitFor(between(5, 15));
        simulation.witness().unhooked(world);
        world.unhook();
    }

    /** Winds what is left of the rope in, with nothing on it. */
    void windInEmpty(double toMetres) {
        windUntil(() -> world.ropeOut() <= toMetres, 200);
    }

    void pressMark() {
        simulation.truth().marks.add(new Truth.Mark(now()));
        instrument.pressMark(world.seconds());
    }

    void temperature(double celsius) {
        instrument.setCelsius(celsius);
    }

    Engine engine() {
        return world.engine();
    }

    private Truth.Moment now() {
        return simulation.moment(world.seconds());
    }

    /** The board's buffer runs over: {@code n} samples are never sent. */
    void loseSamples(int n) {
        long first = now().sample() + 1;
        instrument.loseSamples(n);
        Truth.Moment start = new Truth.Moment(now().seconds(), now().boot(), first);
        simulation.truth().faults.add(new Truth.Fault("lost-samples", start, start, n));
    }

    /** The cable is broken for {@code seconds}, whatever the crew does meanwhile. */
    void breakCable(Runnable meanwhile) {
        Truth.Moment start = now();
        instrument.setBridgeOpen(true);
        meanwhile.run();
        instrument.setBridgeOpen(false);
        simulation.truth().faults.add(new Truth.Fault("open-bridge", start, now(), 0));
    }

    /** Interference on the line: a wrong byte in each of {@code frames} frames. */
    void disturbLine(int frames) {
        instrument.flipBytesIn(frames);
        simulation.truth().faults.add(new Truth.Fault("flipped-bytes", now(), now(), frames));
    }

    /** A byte is lost in each of {@code frames} frames. */
    void loseBytes(int frames) {
        instrument.loseBytesIn(frames);
        simulation.truth().faults.add(new Truth.Fault("lost-bytes", now(), now(), frames));
    }

    /** Ignition noise: one sample off by {@code newtons}. */
    void spike(double newtons) {
        instrument.spike(newtons);
        Truth.Moment next = new Truth.Moment(now().seconds(), now().boot(), now().sample() + 1);
        simulation.truth().faults.add(new Truth.Fault("spike", next, next, Math.round(newtons)));
    }

    /** The board loses power for {@code seconds} and starts again. */
    void powerCut(double seconds) {
        Truth.Moment start = now();
        instrument.restart(world.seconds(), seconds);
        simulation.truth().boots.add(instrument.identity());
        waitFor(seconds);
        simulation.truth().faults.add(new Truth.Fault("restart", start, now(), 0));
    }
}
