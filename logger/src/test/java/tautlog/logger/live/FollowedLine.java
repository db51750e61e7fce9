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
    private static final int HOLD = 30;
    private static final int BUTTON = 1;
    private static final int PULL_FROM = 1_500;
    private static final int STEADY = 400;
    private static final Calibration CALIBRATION = Calibration.of("0", "1");

    /** A sample: what the line carried, what the cell said, what was shown. */
    record Frame(long number, double loadNewtons, int raw, int shown) {}

    /** @param pressedAt before which sample the button was pressed last */
    record Move(long at, int shift, ZeroSource by, long pressedAt) {}

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
    private long pressedAt;
    private int refusals;
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
        public void input(long atNumber, long tick, int selector, int present, int state) {
            detection.input(atNumber, tick, selector, present, state);
            follower.input(atNumber, tick, selector, present, state);
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
        refusals += follower.hasRefused() ? 1 : 0;
        follower.move().ifPresent(found -> {
            moves.add(new Move(number, found.shiftCounts(), found.by(), pressedAt));
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

    /** Somebody holds the mark button while the load stays, and lets go. */
    FollowedLine button(int seconds) {
        input(0);
        input(BUTTON);
        pressedAt = number;
        hold(load, seconds);
        input(0);
        return this;
    }

    private void input(int state) {
        zeroShift.input(number, number * 1_000_000 / RATE, 0, BUTTON, state);
    }

    /** Samples that never come. */
    FollowedLine missing(int samples) {
        number += samples;
        return this;
    }

    void end() {
        detection.end();
    }

    /**
     * Checks a move against the definition: a whole stretch of the outing's grid ended in the frame before it, or three seconds
     * in which the button was held.
     */
    void assertProven(Move move) {
        long first = present.firstKey();
        boolean isHeld = move.by() == ZeroSource.BUTTON;
        int length = isHeld ? HOLD : STRETCH;
        long end =
                isHeld ? present.ceilingKey(move.pressedAt()) + HOLD : first + (move.at() - first) / STRETCH * STRETCH;
        var stretch = present.subMap(end - length, end).values();
        assertTrue(move.at() >= end && move.at() - end < RATE, () -> move + " comes late");
        assertEquals(length, stretch.size(), () -> move + ": a number is missing");
        int least = stretch.stream().min(Integer::compare).orElseThrow();
        int greatest = stretch.stream().max(Integer::compare).orElseThrow();
        assertTrue(least > -PULL_FROM && greatest < PULL_FROM && greatest - least <= STEADY, () -> move + " in motion");
        int sum = stretch.stream().mapToInt(Integer::intValue).sum();
        assertTrue(Math.abs(sum) <= DRIFT_NEWTONS * length, () -> move + ": mean " + sum / (double) length);
        int mean = BigDecimal.valueOf(sum)
                .divide(BigDecimal.valueOf(length), 0, RoundingMode.HALF_UP)
                .intValueExact();
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

    /** How often the button was held for 3 s in vain. */
    int refusals() {
        return refusals;
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
