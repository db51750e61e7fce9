package tautlog.oracle;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import tautlog.quantity.Angle;
import tautlog.rig.Cell;
import tautlog.rig.CellPlace;
import tautlog.rig.DetectSettings;
import tautlog.rig.Driveline;
import tautlog.rig.Hookup;
import tautlog.rig.Limit;
import tautlog.rig.LineCalibration;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;

/**
 * Outings that no instrument would live through: levels exactly at, one count above and one below every threshold, runs exactly
 * as long as a setting asks and one sample off, gaps of every awkward length at every awkward place.
 *
 * <p>The same seed gives the same outing.
 */
final class RandomOutings {
    private static final long[] MILLIHERTZ = {
        1_000, 2_900, 7_333, 10_000, 10_000, 20_000, 20_000, 33_333, 50_000, 50_000, 99_999, 500_000, 1_000_000,
        4_000_000
    };
    private static final String[][] CALIBRATIONS = {
        {"0", "1"}, {"0", "1"}, {"12.5", "0.37"}, {"-30", "2"}, {"0.3", "1.7"}
    };
    /** Real cells stay below 1e-6 per newton; the last four bend by a tenth or more, or have their top among the levels. */
    private static final String[] CURVATURES = {
        "1e-9", "-1e-9", "1e-7", "-1e-7", "1e-6", "-1e-6", "-9.7e-7", "3.3e-5", "-3.3e-5", "2e-4", "-1e-4"
    };

    private static final String[] RATED_PULLS = {"5000", "10000", "4321.5"};
    /** The last as a cosine gives it, with 34 digits. */
    private static final String[] LIMITS = {
        "4000", "2500", "1600", "1500", "3333.3", "800", "1732.050807568877293527446341505872"
    };

    /** Whose figures do not matter here: only its being there does. */
    private static final Driveline DRIVELINE =
            new Driveline(0.09, 0.01, 4, 14, 0.75, 1_120, 540, OptionalDouble.empty(), OptionalDouble.empty());

    private RandomOutings() {}

    static OutingData outing(long seed) {
        Random random = new Random(seed);
        long millihertz = pick(random, MILLIHERTZ);
        Rig rig = rig(random, millihertz);
        String[] line = pick(random, CALIBRATIONS);
        Calibration calibration = onTheRig(new Random(~seed), Calibration.of(line[0], line[1]), rig);
        Instrument instrument = instrument(random, millihertz, rig, calibration);
        RandomTension tension = new RandomTension(random, instrument, rig, calibration);
        tension.play();
        return new OutingData(
                instrument,
                rig,
                calibration,
                tension.frames(),
                new RandomShaft(random, instrument).frames(tension.frames()),
                tension.inputs(),
                tension.hookups());
    }

    /**
     * A line that is slack but for a pull now and then, above a shaft that mostly turns; frames of one sample to many begin a little early or
     * late, some so late that a shaft reading or two fit between their samples; now and then the instrument is slow for some frames.
     */
    static OutingData slack(long seed) {
        Random random = new Random(seed);
        long millihertz = pick(random, new long[] {19_000, 20_000, 21_000, 33_333, 50_000, 99_999, 200_000});
        Rig any = rig(random, millihertz);
        Rig rig = new Rig(
                any.winch(),
                any.ratedPullNewtons(),
                any.hookups(),
                any.detect(),
                any.cellCapacityNewtons(),
                Optional.of(DRIVELINE));
        Calibration calibration = Calibration.of("12.5", "0.37");
        Instrument instrument = new Instrument(
                "TL-TEST", 1, 0, 7, pick(random, new long[] {1_000, 32_768, 1_000_000}), millihertz, 8_388_607, 1);
        List<OutingData.Frame> frames = slackFrames(random, instrument);
        List<OutingData.Input> inputs = new ArrayList<>();
        for (int i = 0; i < 2; i++) {
            inputs.add(new OutingData.Input((i + 1) * 300L + random.nextInt(200), 6, random.nextInt(4)));
        }
        return new OutingData(
                instrument,
                rig,
                calibration,
                frames,
                new RandomShaft(random, instrument).frames(frames),
                inputs,
                List.of());
    }

    private static List<OutingData.Frame> slackFrames(Random random, Instrument instrument) {
        List<OutingData.Frame> frames = new ArrayList<>();
        long longest = 1 + random.nextInt(20);
        long number = random.nextInt(50);
        long period = instrument.tickHz() * 1_000 / instrument.rateMillihertz();
        long late = 0;
        int slowFrames = 0;
        long level = 12;
        for (int left = 1_500; left > 0; ) {
            int n = 1 + random.nextInt((int) longest);
            List<Integer> counts = new ArrayList<>();
            // nothing; 1,480 N; 1,105 N, which some settings call slack though it makes a pull
            level = random.nextInt(12) > 0 ? level : pick(random, new long[] {12, 12, 12, 4_000, 3_000});
            for (int i = 0; i < n; i++) {
                counts.add((int) level + random.nextInt(9) - 4);
            }
            slowFrames = random.nextInt(40) == 0 ? 1 + random.nextInt(5) : slowFrames - 1;
            late += slowFrames > 0 ? n * period * (1 + random.nextInt(4)) : 0;
            late += random.nextInt(20) == 0 ? random.nextInt((int) instrument.tickHz() / 5) : 0;
            long tick = number * instrument.tickHz() * 1_000 / instrument.rateMillihertz() + late;
            frames.add(new OutingData.Frame(number, tick + random.nextInt(2), 0, counts));
            number += n + (random.nextInt(100) == 0 ? random.nextInt(60) : 0);
            left -= n;
        }
        return frames;
    }

    /** In one outing of three a curve, in one of four a cell that carries the line twice; drawn apart from everything else. */
    private static Calibration onTheRig(Random random, Calibration straight, Rig rig) {
        String curvature = random.nextInt(3) == 0 ? pick(random, CURVATURES) : "0";
        Calibration cell =
                new Calibration(straight.zeroCounts(), straight.newtonsPerCount(), new BigDecimal(curvature));
        if (random.nextInt(4) > 0) {
            return cell;
        }
        CellPlace place = random.nextBoolean() ? CellPlace.FAIRLEAD : CellPlace.BLOCK;
        Optional<Angle> angle = Optional.of(new Angle(BigDecimal.valueOf(random.nextInt(151))));
        return LineCalibration.of(
                cell,
                new Rig(
                        rig.winch(),
                        rig.ratedPullNewtons(),
                        rig.hookups(),
                        rig.detect(),
                        rig.cellCapacityNewtons(),
                        rig.driveline(),
                        rig.units(),
                        List.of(),
                        Optional.of(new Cell(place, Optional.empty(), angle, Optional.empty())),
                        rig.sensorAt(),
                        rig.opening()));
    }

    static <T> T pick(Random random, T[] some) {
        return some[random.nextInt(some.length)];
    }

    static <T> T pick(Random random, List<T> some) {
        return some.get(random.nextInt(some.size()));
    }

    static long pick(Random random, long[] some) {
        return some[random.nextInt(some.length)];
    }

    private static Instrument instrument(Random random, long millihertz, Rig rig, Calibration calibration) {
        long[] tickHz = {1_000_000, 1_000_000, 1_000, 32_768, 4_000_000};
        // the end stop: out of reach, or in the middle of the levels
        BigDecimal[] stops = {
            new BigDecimal("20000000"),
            rig.hookups().get(0).limit().newtons(),
            rig.detect().pullFromNewtons(),
            new BigDecimal("5000")
        };
        int fullScale = Math.max(1, calibration.leastCountsAtOrAbove(pick(random, stops)) - 1 + random.nextInt(3));
        int[] pulses = {0, 1, 1, 1, 6};
        return new Instrument(
                "TL-TEST", 1, 0, 7, pick(random, tickHz), millihertz, fullScale, pulses[random.nextInt(pulses.length)]);
    }

    private static Rig rig(Random random, long millihertz) {
        List<Hookup> hookups = new ArrayList<>();
        for (String id : new String[] {"a", "b", "c"}) {
            if (hookups.isEmpty() || random.nextInt(3) > 0) {
                BigDecimal limit = new BigDecimal(pick(random, LIMITS));
                hookups.add(new Hookup(
                        id,
                        random.nextInt(4) == 0,
                        OptionalInt.empty(),
                        List.of(),
                        new Limit(limit, random.nextInt(3) == 0, "choker")));
            }
        }
        return new Rig(
                "test-winch",
                new BigDecimal(pick(random, RATED_PULLS)),
                hookups,
                random.nextInt(3) == 0 ? DetectSettings.DEFAULTS : settings(random, millihertz),
                random.nextInt(3) == 0 ? Optional.of(new BigDecimal("3000")) : Optional.empty(),
                random.nextInt(3) == 0 ? Optional.of(DRIVELINE) : Optional.empty());
    }

    /** Times of a few samples each, so that everything that can wait for something else does so within a short outing. */
    private static DetectSettings settings(Random random, long millihertz) {
        DetectSettings d = DetectSettings.DEFAULTS;
        boolean forces = random.nextBoolean();
        return new DetectSettings(
                d.pullFromNewtons(),
                time(random, millihertz),
                time(random, millihertz),
                time(random, millihertz),
                forces ? d.overloadClear() : new BigDecimal("1"),
                time(random, millihertz),
                forces ? d.slackBelowNewtons() : new BigDecimal("1200.5"),
                time(random, millihertz),
                time(random, millihertz),
                d.shockFrom(),
                forces ? d.shockFactor() : new BigDecimal("1.1"),
                time(random, millihertz),
                forces ? d.joltRise() : new BigDecimal("0.05"),
                time(random, millihertz),
                d.dropFrom(),
                forces ? d.dropBy() : new BigDecimal("0.35"),
                d.stallTo(),
                forces ? d.driftNewtons() : new BigDecimal("10"),
                forces ? d.cycleGate() : new BigDecimal("0.001"));
    }

    /** A time of 1 to about 9 sample intervals, often just at the half where rounding turns. */
    private static BigDecimal time(Random random, long millihertz) {
        BigDecimal samples = BigDecimal.valueOf(2 + random.nextInt(random.nextInt(4) == 0 ? 16 : 6), 0)
                .divide(BigDecimal.valueOf(2));
        return samples.multiply(BigDecimal.valueOf(1_000)).divide(BigDecimal.valueOf(millihertz), 6, RoundingMode.UP);
    }
}
