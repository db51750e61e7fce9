package tautlog.oracle;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import tautlog.rig.DetectSettings;
import tautlog.rig.Hookup;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.HookupSource;
import tautlog.sample.Instrument;

/** Samples, gaps, switches and hookup changes of a random outing. */
final class RandomTension {
    private final Random random;
    private final Instrument instrument;
    private final Rig rig;
    private final Calibration calibration;
    private final DetectSettings set;
    private final List<BigDecimal> levels = new ArrayList<>();
    private final List<Integer> durations = new ArrayList<>();
    private final List<OutingData.Frame> frames = new ArrayList<>();
    private final List<OutingData.Input> inputs = new ArrayList<>();
    private final List<OutingData.HookupChange> hookups = new ArrayList<>();
    private final List<Integer> open = new ArrayList<>();
    private final double speed;
    private final double startTick;
    private final int restlessness;
    private boolean isBridgeOpen;
    private int frameSize;
    private long startNumber;
    private long next;
    private int budget;

    RandomTension(Random random, Instrument instrument, Rig rig, Calibration calibration) {
        this.random = random;
        this.instrument = instrument;
        this.rig = rig;
        this.calibration = calibration;
        set = rig.detect();
        speed = random.nextInt(3) == 0 ? 1 : 0.95 + 0.1 * random.nextDouble();
        startTick = random.nextInt(2) * 5e9 + random.nextInt(1_000_000);
        restlessness = 1 + random.nextInt(400);
        startNumber = random.nextInt(3) == 0 ? 0 : random.nextInt(2) * 5_000_000_000L + random.nextInt(5_000);
        next = startNumber;
        listLevels();
        listDurations();
    }

    List<OutingData.Frame> frames() {
        return frames;
    }

    List<OutingData.Input> inputs() {
        return inputs;
    }

    List<OutingData.HookupChange> hookups() {
        return hookups;
    }

    private void listLevels() {
        BigDecimal pull = set.pullFromNewtons();
        BigDecimal rated = rig.ratedPullNewtons();
        levels.addAll(List.of(
                pull,
                pull,
                pull.divide(BigDecimal.valueOf(2)),
                set.slackBelowNewtons(),
                set.slackBelowNewtons(),
                pull.negate()));
        levels.addAll(List.of(
                BigDecimal.ZERO,
                rated.multiply(set.shockFrom()),
                rated.multiply(set.dropFrom()),
                rated.multiply(new BigDecimal("0.01")),
                set.driftNewtons()));
        for (Hookup hookup : rig.hookups()) {
            for (String share : new String[] {"1", "1", "1.001", "0.25", "0.5", "0.75"}) {
                levels.add(hookup.limit().newtons().multiply(new BigDecimal(share)));
            }
            levels.add(hookup.limit().newtons().multiply(set.overloadClear()));
        }
        rig.cellCapacityNewtons().ifPresent(levels::add);
    }

    private void listDurations() {
        for (BigDecimal seconds : List.of(
                set.pullForSeconds(),
                set.pullEndAfterSeconds(),
                set.bridgeSeconds(),
                set.overloadQuietSeconds(),
                set.slackForSeconds(),
                set.shockWindowSeconds(),
                set.joltWithinSeconds(),
                set.dropWithinSeconds(),
                new BigDecimal("0.15"),
                new BigDecimal("0.5"),
                new BigDecimal("1"),
                new BigDecimal("1.5"))) {
            durations.add(samplesIn(seconds));
        }
    }

    private int samplesIn(BigDecimal seconds) {
        return instrument.rate().samplesIn(seconds);
    }

    void play() {
        frameSize = 1 + random.nextInt(78);
        if (random.nextInt(8) == 0 && instrument.rateMillihertz() <= 10_000) {
            restOnTheTrail();
        } else {
            work();
        }
        cutFrame();
    }

    private void work() {
        int[] budgets = {0, 1, 2, 30, 150, 300, 300, 600};
        // beyond 200 samples a second one settling time needs a few hundred samples
        int slowness = instrument.rateMillihertz() > 200_000 ? 8 : 1;
        budget = budgets[random.nextInt(budgets.length)] * slowness;
        while (budget > 0) {
            segment();
            if (random.nextInt(3) == 0) {
                disturb();
            }
        }
    }

    /** Mostly nothing in the line, for stretches of ten seconds and outings of ten minutes, each more or less a sample. */
    private void restOnTheTrail() {
        budget = around(samplesIn(new BigDecimal(random.nextBoolean() ? "600" : "120")));
        boolean isQuiet = random.nextInt(3) > 0;
        int wiggle = away(calibration.leastCountsAtOrAbove(BigDecimal.ZERO), "0.01") - 1 + random.nextInt(3);
        while (budget > 0) {
            int times = random.nextInt(3) - 1;
            int base = at(set.driftNewtons().multiply(BigDecimal.valueOf(times)));
            int samples = random.nextInt(8) == 0 ? duration() : samplesIn(BigDecimal.TEN);
            if (isQuiet && random.nextInt(4) > 0) {
                hold(base, samples);
            } else {
                alternate(base, base + (isQuiet ? wiggle : 2 * wiggle + 2), samples);
            }
            if (random.nextInt(40) == 0) {
                disturb();
            }
        }
    }

    /** One piece of a pull, each as long as some setting asks, more or less one sample. */
    private void segment() {
        switch (random.nextInt(9)) {
            case 0 -> hold(level(), duration());
            case 1 -> alternate(level(), level(), duration());
            case 2 -> walk(level(), duration());
            case 3 -> spike();
            case 4 -> snap();
            case 5 -> jerk();
            case 6 -> lose();
            case 7 -> load();
            default -> endStop();
        }
    }

    private void spike() {
        int base = level();
        hold(base, 1 + random.nextInt(4));
        hold(base + away(base, "0.2") + random.nextInt(3), 1);
        hold(base, 1 + random.nextInt(4));
    }

    private void snap() {
        hold(below(set.slackBelowNewtons()), around(samplesIn(set.slackForSeconds())));
        int peak = random.nextBoolean() ? at(rig.ratedPullNewtons().multiply(set.shockFrom())) : level();
        if (random.nextBoolean()) {
            alternate(at(set.slackBelowNewtons()), peak - 1, random.nextInt(4));
        }
        hold(peak, 1);
        hold(level(), random.nextInt(3) == 0 ? samplesIn(new BigDecimal("0.5")) : random.nextInt(6));
        // the level for which the factor is met exactly, or not
        BigDecimal half = random.nextInt(6) == 0
                ? BigDecimal.valueOf(-random.nextInt(3))
                : calibration.exactNewtons(peak).divide(set.shockFactor(), 20, RoundingMode.HALF_UP);
        alternate(at(half), at(half) + random.nextInt(2), around(samplesIn(new BigDecimal(pickTime()))));
    }

    private String pickTime() {
        return RandomOutings.pick(random, new String[] {"0.5", "1", "1.5"});
    }

    private void jerk() {
        int base = random.nextInt(3) == 0 ? level() : at(set.slackBelowNewtons()) + random.nextInt(3);
        hold(base, around(samplesIn(set.joltWithinSeconds())));
        int peak = base + away(base, set.joltRise().toPlainString()) - 1 + random.nextInt(3);
        hold(peak, 1 + random.nextInt(3));
        alternate(peak + 1, level(), around(samplesIn(new BigDecimal("0.5"))));
    }

    private void lose() {
        int high = random.nextBoolean() ? at(rig.ratedPullNewtons().multiply(set.dropFrom())) : level();
        hold(high, 1 + random.nextInt(3));
        hold(level(), random.nextInt(around(samplesIn(set.dropWithinSeconds())) + 1) / 2);
        int low = at(BigDecimal.ONE.subtract(set.dropBy()).multiply(calibration.exactNewtons(high)));
        hold(low, 1 + random.nextInt(3));
        if (random.nextBoolean()) {
            hold(below(set.slackBelowNewtons()), around(samplesIn(new BigDecimal("2"))));
        }
    }

    private void load() {
        hold(at(set.pullFromNewtons()), around(samplesIn(set.pullForSeconds())));
        walk(level(), random.nextInt(20));
        hold(below(set.pullFromNewtons().divide(BigDecimal.valueOf(2))), around(samplesIn(set.pullEndAfterSeconds())));
    }

    private void endStop() {
        int stop = random.nextBoolean() ? instrument.fullScale() : -instrument.fullScale() - 1;
        alternate(stop - random.nextInt(2), stop + random.nextInt(2), 1 + random.nextInt(4));
    }

    private void hold(int counts, int samples) {
        alternate(counts, counts, samples);
    }

    private void alternate(int one, int other, int samples) {
        for (int i = 0; i < samples && budget > 0; i++) {
            sample(random.nextBoolean() ? one : other);
        }
    }

    /** Steps about as high as the gate of the rainflow count. */
    private void walk(int from, int samples) {
        int counts = from;
        for (int i = 0; i < samples && budget > 0; i++) {
            int gate = away(counts, set.cycleGate().toPlainString());
            counts += (random.nextInt(5) - 2) * gate + random.nextInt(3) - 1;
            sample(counts);
        }
    }

    private int duration() {
        return random.nextInt(3) == 0 ? 1 + random.nextInt(8) : around(RandomOutings.pick(random, durations));
    }

    private int around(int samples) {
        return Math.max(1, samples - 1 + random.nextInt(3));
    }

    /** The least count at or above a force, the one below it or the one above it. */
    private int at(BigDecimal newtons) {
        return calibration.leastCountsAtOrAbove(newtons) - 1 + random.nextInt(3);
    }

    private int below(BigDecimal newtons) {
        return calibration.leastCountsAtOrAbove(newtons) - 1 - random.nextInt(3);
    }

    private int level() {
        return at(RandomOutings.pick(random, levels));
    }

    /** The difference in counts, from {@code counts} up, for a share of the winch's pull. */
    private int away(int counts, String share) {
        BigDecimal rise = rig.ratedPullNewtons().multiply(new BigDecimal(share));
        return calibration.isStraight()
                ? (int) calibration.leastDifference(rise)
                : calibration.leastCountsAtOrAbove(
                                calibration.exactNewtons(counts).add(rise))
                        - counts;
    }

    private void sample(int counts) {
        if (random.nextInt(restlessness) == 0) {
            disturb();
        }
        add(counts, false);
        budget--;
    }

    private void disturb() {
        switch (random.nextInt(5)) {
            case 0, 1 -> gap();
            case 2 -> change(0);
            case 3 -> inputs.add(new OutingData.Input(next, random.nextInt(8), random.nextInt(8)));
            default -> {
                change(0);
                gap();
            }
        }
    }

    private void gap() {
        long bridge = samplesIn(set.bridgeSeconds());
        long second = samplesIn(BigDecimal.ONE);
        long[] lengths = {1, 1, bridge - 1, bridge, bridge, bridge + 1, bridge + 1, second, second + 1, 2 * bridge + 1};
        long left = Math.max(1, RandomOutings.pick(random, lengths));
        int style = random.nextInt(4);
        while (left > 0) {
            long part = style < 2 ? left : 1 + random.nextInt((int) left);
            boolean isJump = style == 0 || (style > 1 && random.nextBoolean());
            if (isJump) {
                cutFrame();
                next += part;
            }
            for (long i = 0; i < part && !isJump; i++) {
                add(level(), true);
            }
            left -= part;
            if (random.nextInt(6) == 0) {
                change(-random.nextInt((int) part));
            }
        }
    }

    /** A hookup named at the next sample's number or a little before, which may lie in a gap; often the one that is on. */
    private void change(int offset) {
        long earliest = hookups.isEmpty()
                ? startNumber
                : hookups.get(hookups.size() - 1).atNumber();
        String id = random.nextInt(12) == 0
                ? "not-in-the-rig"
                : RandomOutings.pick(random, rig.hookups()).id();
        // it is told before the first sample at or after its number
        long told = Math.max(
                next + offset,
                frames.isEmpty() ? startNumber : frames.get(frames.size() - 1).lastNumber() + 1);
        hookups.add(new OutingData.HookupChange(
                Math.max(earliest, Math.max(told, open.isEmpty() ? told : next)),
                id,
                RandomOutings.pick(random, HookupSource.values())));
    }

    private void add(int counts, boolean bridgeOpen) {
        if (!open.isEmpty() && (bridgeOpen != isBridgeOpen || open.size() >= frameSize)) {
            cutFrame();
        }
        isBridgeOpen = bridgeOpen;
        open.add(counts);
        next++;
    }

    private void cutFrame() {
        if (open.isEmpty()) {
            return;
        }
        long number = next - open.size();
        double ticks = (number - startNumber) * speed * instrument.tickHz() * 1_000.0 / instrument.rateMillihertz();
        long tick = Math.round(startTick + ticks);
        boolean atStop = open.stream().anyMatch(instrument::isAtEndStop) || random.nextInt(10) == 0;
        frames.add(new OutingData.Frame(number, tick, (atStop ? 1 : 0) + (isBridgeOpen ? 2 : 0), open));
        open.clear();
        frameSize = random.nextInt(4) == 0 ? 1 + random.nextInt(3) : 1 + random.nextInt(78);
    }
}
