package tautlog.logger.simulate.instrument;

import java.util.SplittableRandom;
import tautlog.logger.simulate.physics.World;
import tautlog.logger.wire.FrameEncoder;
import tautlog.sample.Evidence;
import tautlog.sample.Instrument;

/**
 * The board: samples the cell, times the pulses, sends HELLO, TENSION, SHAFT, HEALTH and INPUT.
 *
 * <p>Its crystal and its converter are each a little off, so that nothing downstream can rely on round numbers. It can be
 * made to lose samples, to restart, to run with a broken cable. Call {@link #look} after every step of the world.
 */
public final class SimulatedInstrument {
    /** Of the nominal rate: a converter runs on its own oscillator. */
    private static final double CONVERTER_OFF = -0.0015;

    private static final double CRYSTAL_OFF = 25e-6;
    private static final long TICK_HZ = 1_000_000;
    private static final int BATCH = 25;
    private static final double SHAFT_SECONDS = 0.1;
    private static final double STATE_SECONDS = 1;
    /** Mark button, clutch and brake are wired. */
    private static final int PRESENT = 7;

    private final double rateHertz;
    private final LoadCell cell;
    private final PulseSensor sensor;
    private final FaultyLine line;
    private final FrameEncoder encoder = new FrameEncoder();
    private final SplittableRandom random;
    private final int[] counts = new int[BATCH];
    private final int[] ages = new int[60];
    private final double[] pulseSeconds = new double[60];
    private Instrument identity;
    private double bootSeconds;
    private double silentUntil;
    private long tickBase;
    private int seq;
    private long number;
    private int batched;
    private boolean batchOpen;
    private long samplesLost;
    private long samplesToLose;
    private long sent;
    private long frames;
    private long pulses;
    private int pulsesPending;
    private double turnsBefore;
    private double nextShaft;
    private double nextState;
    private int inputSent = -1;
    private int selector;
    private double markUntil = -1;
    private double celsius = 12;
    private double dragNewtons = 40;
    private double stepSeconds;

    /**
     * @param rateHertz nominal sample rate
     * @param pulsesPerRevolution of the shaft
     * @param jointDegrees angle of the joint between tractor and sensor
     */
    public SimulatedInstrument(int rateHertz, int pulsesPerRevolution, double jointDegrees, long seed, ByteSink sink) {
        this.rateHertz = rateHertz * (1 + CONVERTER_OFF);
        random = new SplittableRandom(seed);
        cell = new LoadCell(random.nextLong());
        sensor = new PulseSensor(pulsesPerRevolution, jointDegrees, 0.05, random.nextLong());
        line = new FaultyLine(sink, random.nextLong());
        identity = new Instrument(
                "SIM-0001", 1, 0, boot(), TICK_HZ, rateHertz * 1_000L, LoadCell.FULL_SCALE, pulsesPerRevolution);
        boots(0);
    }

    private long boot() {
        return random.nextInt() & 0xffff_ffffL;
    }

    private void boots(double seconds) {
        bootSeconds = seconds;
        silentUntil = seconds;
        tickBase = random.nextInt() & 0xffff_ffffL;
        seq = 0;
        number = 0;
        batched = 0;
        samplesLost = 0;
        samplesToLose = 0;
        pulses = 0;
        pulsesPending = 0;
        nextShaft = seconds + SHAFT_SECONDS;
        nextState = seconds;
        inputSent = -1;
    }

    /** The crew turns the hookup switch. */
    public void select(int position) {
        selector = position;
    }

    /** Somebody presses the mark button for half a second. */
    public void pressMark(double atSeconds) {
        markUntil = atSeconds + 0.5;
    }

    /** Temperature of cell and board, °C. */
    public void setCelsius(double celsius) {
        this.celsius = celsius;
    }

    /** What the rope alone pulls at the cell while the line is slack, N. */
    public void setDrag(double newtons) {
        dragNewtons = newtons;
    }

    /** Drops the next {@code n} samples inside the instrument, as when its buffer runs over. */
    public void loseSamples(int n) {
        samplesToLose += n;
    }

    public void setBridgeOpen(boolean open) {
        cell.setOpen(open);
    }

    /** One sample will be off by {@code newtons}. */
    public void spike(double newtons) {
        cell.spike(newtons);
    }

    public void flipBytesIn(int framesToDamage) {
        line.flipIn(framesToDamage);
    }

    public void loseBytesIn(int framesToDamage) {
        line.loseIn(framesToDamage);
    }

    /** Loses power now, and starts again as another boot after {@code offSeconds}. */
    public void restart(double nowSeconds, double offSeconds) {
        line.flush(nowSeconds);
        boots(nowSeconds + offSeconds);
        identity = new Instrument(
                identity.id(),
                identity.firmwareMajor(),
                identity.firmwareMinor(),
                boot(),
                identity.tickHz(),
                identity.rateMillihertz(),
                identity.fullScale(),
                identity.pulsesPerRevolution());
    }

    public Instrument identity() {
        return identity;
    }

    /** Number of the sample taken last at {@code seconds} or before; −1 when the board was off. */
    public long numberAt(double seconds) {
        return seconds < bootSeconds ? -1 : (long) Math.floor((seconds - bootSeconds) * rateHertz);
    }

    public long samplesSent() {
        return sent;
    }

    public long framesSent() {
        return frames;
    }

    public long framesDamaged() {
        return line.damaged();
    }

    /** Takes in one step of the world. */
    public void look(World world) {
        double now = world.seconds();
        stepSeconds = world.lastStepSeconds();
        cell.feel(Math.max(world.tension(), dragNewtons), stepSeconds);
        notePulses(world, now);
        if (now < silentUntil) {
            return;
        }
        if (now >= nextState) {
            nextState += STATE_SECONDS;
            sendState(world, now);
        }
        takeSamples(now);
        if (now >= nextShaft) {
            nextShaft += SHAFT_SECONDS;
            sendShaft(now);
        }
        sendInputIfChanged(world, now);
    }

    private void notePulses(World world, double now) {
        double turns = world.shaftRevolutions();
        while (turns >= sensor.nextAtTurns()) {
            double part = (sensor.nextAtTurns() - turnsBefore) / (turns - turnsBefore);
            sensor.pass();
            if (now >= silentUntil && pulsesPending < pulseSeconds.length) {
                pulses++;
                pulseSeconds[pulsesPending++] = now - stepSeconds * (1 - part);
            }
        }
        turnsBefore = turns;
    }

    private void takeSamples(double now) {
        double at = bootSeconds + number / rateHertz;
        while (at <= now) {
            int c = cell.counts(1 - (now - at) / stepSeconds, celsius);
            if (samplesToLose > 0) {
                samplesToLose--;
                samplesLost++;
                sendTension();
                number++;
            } else {
                batch(c, now);
            }
            at = bootSeconds + number / rateHertz;
        }
    }

    private void batch(int c, double now) {
        if (batched > 0 && batchOpen != cell.isOpen()) {
            sendTension();
        }
        batchOpen = cell.isOpen();
        counts[batched++] = c;
        number++;
        if (batched == BATCH) {
            sendTension();
            line.flush(now);
        }
    }

    private void sendTension() {
        if (batched == 0) {
            return;
        }
        long first = number - batched;
        long tick = tickAt(bootSeconds + first / rateHertz);
        room();
        line.added(encoder.tension(line.buffer(), line.size(), seq(), tick, first, flags(), counts, 0, batched));
        sent += batched;
        batched = 0;
    }

    private int flags() {
        int flags = batchOpen ? Evidence.FLAG_OPEN_BRIDGE : 0;
        for (int i = 0; i < batched; i++) {
            if (identity.isAtEndStop(counts[i])) {
                return flags | Evidence.FLAG_END_STOP;
            }
        }
        return flags;
    }

    private void sendShaft(double now) {
        long tick = tickAt(now);
        for (int i = 0; i < pulsesPending; i++) {
            ages[i] = (int) (tick - tickAt(pulseSeconds[i]));
        }
        room();
        line.added(encoder.shaft(line.buffer(), line.size(), seq(), tick, pulses, ages, pulsesPending));
        pulsesPending = 0;
    }

    private void sendState(World world, double now) {
        room();
        line.added(encoder.hello(line.buffer(), line.size(), seq(), identity, tickAt(now)));
        line.added(encoder.health(
                line.buffer(), line.size(), seq(), tickAt(now), supply(world), decidegrees(), samplesLost));
        sendInput(input(world, now), now);
    }

    private void sendInputIfChanged(World world, double now) {
        int input = input(world, now);
        if (input != inputSent) {
            room();
            sendInput(input, now);
        }
    }

    private void sendInput(int input, double now) {
        line.added(encoder.input(line.buffer(), line.size(), seq(), tickAt(now), input >> 8, PRESENT, input & 0xff));
        inputSent = input;
    }

    private int input(World world, double now) {
        int state = now < markUntil ? 1 : 0;
        state |= world.drum().isClutchOn() ? 2 : 0;
        state |= world.drum().isBrakeOn() ? 4 : 0;
        return selector << 8 | state;
    }

    private int supply(World world) {
        int sag = world.engine().isCranking() ? 620 : world.engine().isRunning() ? 0 : 35;
        return 5_020 - sag - random.nextInt(12);
    }

    private int decidegrees() {
        return (int) Math.rint(celsius * 10) + random.nextInt(2);
    }

    private int seq() {
        frames++;
        return seq++ & 0xff;
    }

    private void room() {
        if (line.size() > line.buffer().length - 4 * FrameEncoder.LONGEST_FRAME) {
            throw new IllegalStateException("the line was not flushed for " + line.size() + " bytes");
        }
    }

    private long tickAt(double seconds) {
        return tickBase + (long) Math.floor((seconds - bootSeconds) * TICK_HZ * (1 + CRYSTAL_OFF));
    }
}
