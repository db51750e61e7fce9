package tautlog.logger.simulate.physics;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The winch on its hill. One thread steps it; look at it between steps. */
public final class World {
    public static final double STEP_SECONDS = 0.000_2;
    public static final int STEPS_PER_SECOND = 5_000;
    /** So many steps may be taken as one while nothing but the shaft moves. */
    public static final int STRIDE = 5;

    private final Engine engine;
    private final Drum drum;
    private final WorldEvents events;
    private @Nullable Line line;
    private @Nullable DraggedLog log;
    private double dampingSeconds = Line.USUAL_DAMPING_SECONDS;
    private double carriedSpeed;
    private double looseOut;
    private double shaftRevolutions;
    private long steps;
    private double lastStepSeconds = STEP_SECONDS;

    public World(Engine engine, Drum drum, WorldEvents events) {
        this.engine = engine;
        this.drum = drum;
        this.events = events;
    }

    public Engine engine() {
        return engine;
    }

    public Drum drum() {
        return drum;
    }

    /** Chokes {@code log}, which lies where it is, with this much slack in the line (m). */
    public void hookUp(Rigging rigging, DraggedLog log, double slackMetres) {
        this.log = log;
        line = new Line(rigging, log.metres + slackMetres, dampingSeconds);
        looseOut = line.ropeOut;
    }

    /** Takes the choker off; the rope's end stays where it is. */
    public void unhook() {
        looseOut = ropeOut();
        line = null;
        log = null;
    }

    /** The crew carries the rope's end: {@code metresPerSecond} out; 0 when nobody does. */
    public void carryOut(double metresPerSecond) {
        carriedSpeed = metresPerSecond;
    }

    /** For checks against formulas that know no damping. */
    public void withoutDamping() {
        dampingSeconds = 0;
    }

    public void step() {
        advance(1);
    }

    /** Does {@link #STRIDE} steps as one; only while {@link #isAtRest}. */
    public void stride() {
        advance(STRIDE);
    }

    /** True when neither log nor drum moves, or nothing hangs on the line: the forces stay what they are. */
    public boolean isAtRest() {
        if (log == null || line == null) {
            return true;
        }
        boolean drumStands = drum.radPerS == 0 && !drum.isClutchOn();
        return drumStands && log.speed == 0;
    }

    private void advance(int fineSteps) {
        double h = fineSteps * STEP_SECONDS;
        lastStepSeconds = h;
        steps += fineSteps;
        double pull = 0;
        if (line != null && log != null) {
            if (line.stretch(log.metres, drum.ropeSpeed(), log.speed)) {
                letGo(line, log);
            }
            pull = line.tension;
            log.move(h, line.tensionAtLog(drum.ropeSpeed()), events);
        }
        engine.turn(h);
        drum.turn(h, pull, engine);
        pay(h);
        shaftRevolutions += engine.radPerS * h / (2 * Math.PI);
    }

    private void pay(double h) {
        if (carriedSpeed > 0) {
            drum.radPerS = -carriedSpeed / drum.radius();
        }
        double out = Math.max(0, ropeOut() - drum.ropeSpeed() * h);
        if (line == null) {
            looseOut = out;
        } else {
            line.ropeOut = out;
        }
        drum.ropeOut(out);
    }

    private void letGo(Line line, DraggedLog log) {
        double tension = line.tension;
        Optional<Part> weakest = line.weakest();
        if (weakest.isEmpty()) {
            events.slipped(tension);
            line.part();
            return;
        }
        Part part = weakest.get();
        events.parted(part, tension * part.multiple(), tension);
        if (part.freesMetres() > 0) {
            loseTheBlock(line, log, part);
        } else {
            line.part();
        }
    }

    private void loseTheBlock(Line line, DraggedLog log, Part part) {
        log.metres -= part.freesMetres();
        Rigging was = line.rigging();
        Rigging straight = new Rigging(
                was.hookup(),
                was.selector(),
                was.parts().stream().filter(p -> p.multiple() == 1).toList(),
                was.ropeStiffness(),
                0,
                1,
                was.slipsAt());
        this.line = new Line(straight, line.ropeOut, dampingSeconds);
    }

    /** Tension in the line at the winch, N; 0 when slack. */
    public double tension() {
        return line == null ? 0 : line.tension;
    }

    /** Stiffness of the line as it is, N/m; 0 with nothing hooked. */
    public double lineStiffness() {
        return line == null ? 0 : line.stiffness();
    }

    public boolean isParted() {
        return line != null && line.isParted();
    }

    public Optional<DraggedLog> log() {
        return Optional.ofNullable(log);
    }

    public Optional<Rigging> rigging() {
        return Optional.ofNullable(line).map(Line::rigging);
    }

    /** Rope off the drum, m. */
    public double ropeOut() {
        return line == null ? looseOut : line.ropeOut;
    }

    /** Rate at which the ends of the line part, m/s. */
    public double closingSpeed() {
        return drum.ropeSpeed() + (log == null ? 0 : log.speed);
    }

    /** Angle of the shaft at the tractor since the start, in revolutions. */
    public double shaftRevolutions() {
        return shaftRevolutions;
    }

    /** True while someone carries the rope out. */
    public boolean isCarried() {
        return carriedSpeed > 0;
    }

    /** Seconds since the start. */
    public double seconds() {
        return steps * STEP_SECONDS;
    }

    /** Length of the step done last, s. */
    public double lastStepSeconds() {
        return lastStepSeconds;
    }

    /** Steps since the start. */
    public long steps() {
        return steps;
    }

    /** Energy of line and log, J; the hill's and the engine's not counted. */
    public double energy() {
        return (line == null ? 0 : line.energy()) + (log == null ? 0 : log.energy());
    }
}
