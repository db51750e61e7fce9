package tautlog.logger.simulate;

import java.util.ArrayList;
import java.util.List;
import tautlog.logger.simulate.instrument.ByteSink;
import tautlog.logger.wire.FrameDecoder;
import tautlog.logger.wire.FrameFault;
import tautlog.logger.wire.FrameSink;
import tautlog.sample.Instrument;

/** What a decoder makes of a simulation's bytes, kept in lists. */
final class HeardFrames implements ByteSink, FrameSink {
    private final FrameDecoder decoder = new FrameDecoder();
    final List<Instrument> boots = new ArrayList<>();
    final List<String> gaps = new ArrayList<>();
    final List<Integer> inputs = new ArrayList<>();
    /** Seconds (of the simulation, at sending) and pulses of every SHAFT frame. */
    final List<double[]> shaft = new ArrayList<>();

    long samples;
    long next;
    long openSamples;
    long rejected;
    long endStops;
    int greatest = Integer.MIN_VALUE;
    private double seconds;

    @Override
    public void send(byte[] bytes, int n, double seconds) {
        this.seconds = seconds;
        decoder.feed(bytes, 0, n, this);
    }

    @Override
    public void hello(int seq, Instrument instrument, long tick) {
        if (boots.isEmpty() || boots.get(boots.size() - 1).boot() != instrument.boot()) {
            boots.add(instrument);
            next = 0;
        }
    }

    @Override
    public void tension(int seq, long tick, long number, int flags, int[] counts, int n) {
        if (number != next) {
            gaps.add(next + "+" + (number - next));
        }
        next = number + n;
        samples += n;
        if ((flags & 2) != 0) {
            openSamples += n;
            return;
        }
        endStops += flags & 1;
        for (int i = 0; i < n; i++) {
            greatest = Math.max(greatest, counts[i]);
        }
    }

    @Override
    public void shaft(int seq, long tick, long pulses, int[] ages, int n) {
        shaft.add(new double[] {seconds, pulses});
    }

    @Override
    public void health(int seq, long tick, int supplyMillivolts, int temperatureDecidegrees, long lost) {}

    @Override
    public void input(int seq, long tick, int selector, int present, int state) {
        inputs.add(selector << 8 | state);
    }

    @Override
    public void rejected(FrameFault fault) {
        rejected++;
    }

    /** Mean speed of the shaft between two times, rpm, six pulses a turn. */
    double shaftRpm(double fromSeconds, double toSeconds) {
        double[] from =
                shaft.stream().filter(s -> s[0] >= fromSeconds).findFirst().orElseThrow();
        double[] to = shaft.stream().filter(s -> s[0] >= toSeconds).findFirst().orElseThrow();
        return 60 * (to[1] - from[1]) / 6 / (to[0] - from[0]);
    }
}
