package tautlog.logger.simulate;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import tautlog.config.ConfigException;
import tautlog.detect.Detection;
import tautlog.detect.Finding;
import tautlog.detect.FindingSink;
import tautlog.detect.Second;
import tautlog.logger.beacon.BeaconLamp;
import tautlog.logger.config.Installation;
import tautlog.logger.live.LiveOutings;
import tautlog.logger.recorder.LiveEvents;
import tautlog.logger.simulate.instrument.ByteSink;
import tautlog.logger.wire.FrameDecoder;
import tautlog.logger.wire.OutingAssembler;
import tautlog.recording.OutingStart;
import tautlog.sample.Evidence;
import tautlog.sample.HookupSource;
import tautlog.sample.Position;
import tautlog.sample.Tally;
import tautlog.sample.ZeroSource;

/**
 * One scenario, played through the logger's own line without port and file: bytes, frames, outings, detectors.
 *
 * <p>Beside the live detectors a second set sees the same evidence, as a report does later: it feeds the hour meters.
 */
final class JudgedRun implements ByteSink, LiveEvents {
    final List<JudgedOuting> outings = new ArrayList<>();
    final Truth truth;

    private final Installation setup;
    private final LiveOutings live;
    private final OutingAssembler assembler;
    private final FrameDecoder decoder = new FrameDecoder();
    private Optional<Evidence> later = Optional.empty();

    private JudgedRun(Scenario scenario, long seed, Installation setup) {
        this.setup = setup;
        live = new LiveOutings(setup, "test", this, new BeaconLamp());
        assembler = new OutingAssembler(live);
        truth = Simulation.play(scenario, seed, this);
        assembler.end();
    }

    static JudgedRun of(Scenario scenario, long seed) {
        Path root = Path.of(Objects.requireNonNull(System.getProperty("tautlog.root")));
        try {
            return new JudgedRun(scenario, seed, Installation.load(root.resolve("samples/logger.toml")));
        } catch (ConfigException wrong) {
            throw new IllegalStateException(wrong);
        }
    }

    Installation setup() {
        return setup;
    }

    JudgedOuting outing(int boot) {
        return outings.get(boot);
    }

    private JudgedOuting open() {
        return outings.get(outings.size() - 1);
    }

    @Override
    public void send(byte[] bytes, int n, double seconds) {
        long nanos = Math.round(seconds * 1e9);
        assembler.arriving(nanos);
        live.arriving(nanos, nanos / 1_000);
        decoder.feed(bytes, 0, n, assembler);
    }

    @Override
    public void begin(OutingStart start, Optional<Long> utcMicros) {
        JudgedOuting outing = new JudgedOuting(
                start.instrument(), setup.rig(), start.calibration().response());
        outings.add(outing);
        later = Optional.of(new Detection(
                start.instrument(), setup.rig(), start.calibration().response(), new LaterReading(outing)));
    }

    @Override
    public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
        JudgedOuting outing = open();
        if (number != outing.next) {
            outing.gaps.add(outing.next + "+" + (number - outing.next));
        }
        outing.next = number + n;
        outing.samples += n;
        outing.keep(number, counts, from, n);
        later.orElseThrow().tension(number, tick, flags, counts, from, n);
    }

    @Override
    public void shaft(long tick, long pulses, long[] pulseTicks, int n) {
        later.orElseThrow().shaft(tick, pulses, pulseTicks, n);
    }

    @Override
    public void input(long atNumber, long tick, int selector, int present, int state) {
        later.orElseThrow().input(atNumber, tick, selector, present, state);
    }

    @Override
    public void hookup(long atNumber, String id, HookupSource by) {
        later.orElseThrow().hookup(atNumber, id, by);
    }

    @Override
    public void mark(long atNumber, String note) {
        open().marks.add(atNumber);
    }

    @Override
    public void health(long tick, int supplyMillivolts, int temperatureDecidegrees, long lost) {}

    @Override
    public void clock(long tick, long utcMicros) {}

    @Override
    public void zero(long atNumber, int shiftCounts, ZeroSource by) {}

    @Override
    public void position(Position position) {}

    @Override
    public void tally(Tally tally) {}

    @Override
    public void end() {
        later.orElseThrow().end();
    }

    @Override
    public void finding(Finding finding) {
        open().findings.add(finding);
    }

    @Override
    public void second(Second second) {}

    /** Takes what the second set of detectors says. */
    private record LaterReading(JudgedOuting outing) implements FindingSink {
        @Override
        public void finding(Finding finding) {
            outing.hours.finding(finding);
            outing.foundLater.add(finding);
        }

        @Override
        public void second(Second second) {}

        @Override
        public void cycle(long rangeCounts, long twiceMeanCounts, int halves) {}

        @Override
        public void shaftReading(long tick, double rpm) {
            outing.hours.shaftReading(tick, rpm);
        }
    }
}
