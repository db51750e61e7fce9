package tautlog.logger.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.TreeMap;
import tautlog.config.ConfigException;
import tautlog.detect.Detection;
import tautlog.detect.Finding;
import tautlog.detect.FindingSink;
import tautlog.detect.Second;
import tautlog.logger.LoggerFolder;
import tautlog.logger.config.ZeroChoice;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;
import tautlog.sample.QuietEvidence;
import tautlog.sample.ZeroShift;
import tautlog.sample.ZeroSource;

/**
 * A line whose load is known, with a cell that drifts, behind a {@link ZeroFollower}: 10 Hz, 1 N a count, frames of 1 to 9
 * samples.
 */
final class FollowedLine implements FindingSink {
    static final int DRIFT_NEWTONS = 200;
    private static final int RATE = 10;
    private static final int STRETCH = 100;
    private static final int PULL_FROM = 1_500;
    private static final int STEADY = 400;
    private static final Calibration CALIBRATION = Calibration.of("0", "1");

    /** A sample: what the line carried, what the cell said, what was shown. */
    record Frame(long number, double loadNewtons, int raw, int shown) {}

    record Move(long at, int shift, ZeroSource by) {}

    private final ZeroFollower follower;
    private final Detection detection;
    private final ZeroShift zeroShift;
    private final Random random = new Random(1);
    private final List<Frame> frames = new ArrayList<>();
    private final TreeMap<Long, Integer> present = new TreeMap<>();
    private final List<Move> moves = new ArrayList<>();
    private final List<Finding.Pull> pulls = new ArrayList<>();
    private long number;
    private double load;
    private double cellDrift;
    private int noise;

    FollowedLine(ZeroChoice choice) {
        Instrument instrument = new Instrument("TL-0001", 1, 0, 7, 1_000_000, RATE * 1_000L, 8_388_607, 0);
        Rig rig = rig();
        follower = new ZeroFollower(instrument, rig, CALIBRATION, choice);
        detection = new Detection(instrument, rig, CALIBRATION, this);
        zeroShift = new ZeroShift(instrument, new Shown());
    }

    private static Rig rig() {
        try {
            return Rig.parse("rig.toml", LoggerFolder.RIG);
        } catch (ConfigException wrong) {
            throw new AssertionError(wrong);
        }
    }

    /** What the detectors are told. */
    private final class Shown extends QuietEvidence {
        @Override
        public void tension(long first, long tick, int flags, int[] counts, int from, int n) {
            detection.tension(first, tick, flags, counts, from, n);
            follower.tension(first, tick, flags, counts, from, n);
            for (int i = 0; i < n; i++) {
                frames.add(new Frame(first + i, loads[i], present.get(first + i), counts[from + i]));
            }
        }

        @Override
        public void zero(long atNumber, int shiftCounts, ZeroSource by) {
            follower.zero(atNumber, shiftCounts, by);
        }
    }

    private final double[] loads = new double[RATE];

    /** The load goes from one value to the other in so many seconds. */
    FollowedLine ramp(double from, double to, int seconds) {
        int samples = seconds * RATE;
        int k = 0;
        while (k < samples) {
            int n = Math.min(samples - k, 1 + random.nextInt(9));
            int[] counts = new int[n];
            for (int i = 0; i < n; i++, k++) {
                load = from + (to - from) * (k + 1) / samples;
                loads[i] = load;
                counts[i] = (int) Math.round(load + cellDrift + (random.nextDouble() - 0.5) * noise);
                present.put(number + i, counts[i]);
            }
            frame(counts);
        }
        return this;
    }

    private void frame(int[] counts) {
        zeroShift.tension(number, number * 1_000_000 / RATE, 0, counts, 0, counts.length);
        number += counts.length;
        follower.move().ifPresent(found -> {
            moves.add(new Move(number, found.shiftCounts(), found.by()));
            zeroShift.zero(number, found.shiftCounts(), found.by());
        });
    }

    FollowedLine hold(double newtons, int seconds) {
        return ramp(newtons, newtons, seconds);
    }

    FollowedLine pull(double newtons, int seconds) {
        return ramp(load, newtons, 1).hold(newtons, seconds).ramp(newtons, 0, 1).hold(0, 4);
    }

    /** The cell's zero moves. */
    FollowedLine drift(double newtons) {
        cellDrift += newtons;
        return this;
    }

    FollowedLine noise(int newtons) {
        noise = newtons;
        return this;
    }

    /** Samples that never come. */
    FollowedLine missing(int samples) {
        number += samples;
        return this;
    }

    void end() {
        detection.end();
    }

    /** Checks a move against the definition: a whole stretch of the outing's grid ended in the frame before it. */
    void assertProven(Move move) {
        long first = present.firstKey();
        long end = first + (move.at() - first) / STRETCH * STRETCH;
        var stretch = present.subMap(end - STRETCH, end).values();
        assertTrue(move.at() - end < RATE, () -> move + " comes late");
        assertEquals(STRETCH, stretch.size(), () -> move + ": a number is missing");
        int least = stretch.stream().min(Integer::compare).orElseThrow();
        int greatest = stretch.stream().max(Integer::compare).orElseThrow();
        assertTrue(least > -PULL_FROM && greatest < PULL_FROM && greatest - least <= STEADY, () -> move + " in motion");
        int sum = stretch.stream().mapToInt(Integer::intValue).sum();
        assertTrue(Math.abs(sum) <= DRIFT_NEWTONS * STRETCH, () -> move + ": mean " + sum / (double) STRETCH);
        int mean = BigDecimal.valueOf(sum, 2).setScale(0, RoundingMode.HALF_UP).intValueExact();
        assertEquals(mean, move.shift());
    }

    double load() {
        return load;
    }

    double cellDrift() {
        return cellDrift;
    }

    int shift() {
        return follower.shiftCounts();
    }

    int lastShown() {
        return frames.get(frames.size() - 1).shown();
    }

    ZeroFollower follower() {
        return follower;
    }

    List<Frame> frames() {
        return frames;
    }

    List<Move> moves() {
        return moves;
    }

    List<Finding.Pull> pulls() {
        return pulls;
    }

    @Override
    public void finding(Finding finding) {
        if (finding instanceof Finding.Pull pull) {
            pulls.add(pull);
        }
    }

    @Override
    public void second(Second second) {}

    @Override
    public void cycle(long rangeCounts, long twiceMeanCounts, int halves) {}

    @Override
    public void shaftReading(long tick, double rpm) {}
}
