package tautlog.desk.uncertainty;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tautlog.calibration.CellCalibration;
import tautlog.config.ConfigException;
import tautlog.desk.report.Entry;
import tautlog.detect.Finding;
import tautlog.rig.Rig;

/**
 * The intervals of whole figures against a known truth, from the calibration's readings to the figure in the report.
 *
 * <p>Where errors are what the intervals take them for, 93 to 97 of 100 must hold the truth. Where an interval rests on a bound (a zero that
 * follows or drifts, a crest between two samples, readings some of which are nearly as high as the greatest) it may hold it more often,
 * never less than 93 times. Seeded: the same shares at every run; {@code -Dtautlog.coverage=true} prints them.
 */
class FigureCoverageTest {
    private static final int OUTINGS = 1_000;
    private static final double LEAST = 0.93;
    private static final double MOST = 0.97;

    /** Errors of cell, zero (half width, newtons) and reading. */
    private enum World {
        NOISE(2, 0, 0, 60, 0, 1),
        SCATTER(25, 0, 0, 2, 0, 1),
        REFERENCE(2, 0.6, 0, 2, 0, 1),
        ANGLE(2, 0, 0, 2, 3, 1),
        ALL_OF_THEM(20, 0.2, 60, 40, 0.5, 2);

        private final SimulatedCell cell;
        private final double zeroNewtons;
        private final double noiseCounts;
        private final double angleDegrees;

        World(
                double scatterCounts,
                double referencePercent,
                double zeroNewtons,
                double noiseCounts,
                double angleDegrees,
                int degree) {
            cell = new SimulatedCell(scatterCounts, referencePercent, degree);
            this.zeroNewtons = zeroNewtons;
            this.noiseCounts = noiseCounts;
            this.angleDegrees = angleDegrees;
        }
    }

    /** How the tension of a pull goes; newtons, 10 samples a second. */
    private enum Shape {
        /** 20 s at one height. */
        LEVEL(true) {
            @Override
            double[] tensions(double top, Random random) {
                return filled(200, top);
            }
        },
        /** Two minutes at one height. */
        LONG_LEVEL(true) {
            @Override
            double[] tensions(double top, Random random) {
                return filled(1_200, top);
            }
        },
        /** A minute of which 10 s are the highest. */
        STEP(true) {
            @Override
            double[] tensions(double top, Random random) {
                double[] tensions = filled(600, top - 1_000);
                Arrays.fill(tensions, 200, 300, top);
                return tensions;
            }
        },
        /** One reading stands out. */
        SPIKE(true) {
            @Override
            double[] tensions(double top, Random random) {
                double[] tensions = filled(200, top - 2_000);
                tensions[50 + random.nextInt(100)] = top;
                return tensions;
            }
        },
        /** Up and down within two seconds. */
        SHARP(true) {
            @Override
            double[] tensions(double top, Random random) {
                double[] tensions = filled(200, top - 2_500);
                for (int i = -10; i <= 10; i++) {
                    tensions[100 + i] = top - 250 * Math.abs(i);
                }
                return tensions;
            }
        },
        /** A slow swell: some readings are nearly as high as the greatest. */
        SWELL(false) {
            @Override
            double[] tensions(double top, Random random) {
                double[] tensions = new double[400];
                for (int i = 0; i < tensions.length; i++) {
                    tensions[i] = top - 1_000 * (1 - Math.sin(Math.PI * (i + 0.5) / tensions.length));
                }
                return tensions;
            }
        },
        /** A level that is not one: it wanders by about the noise. */
        RESTLESS(false) {
            @Override
            double[] tensions(double top, Random random) {
                double[] tensions = new double[300];
                for (int i = 0; i < tensions.length; i++) {
                    tensions[i] = top - 40 * random.nextDouble();
                }
                tensions[150] = top;
                return tensions;
            }
        };

        /** Held to 93 to 97; else conservative. */
        private final boolean twoSided;

        Shape(boolean twoSided) {
            this.twoSided = twoSided;
        }

        abstract double[] tensions(double top, Random random);

        private static double[] filled(int samples, double tension) {
            double[] tensions = new double[samples];
            Arrays.fill(tensions, tension);
            return tensions;
        }
    }

    private static boolean holds(Interval interval, double truth) {
        return interval.lowNewtons().orElseThrow() <= truth
                && truth <= interval.highNewtons().orElse(Double.POSITIVE_INFINITY);
    }

    private static void assertShare(String what, int held, int of, boolean twoSided) {
        double share = (double) held / of;
        if (Boolean.getBoolean("tautlog.coverage")) {
            System.out.printf(Locale.ROOT, "%.3f  %s%s%n", share, what, twoSided ? "" : " (conservative)");
        }
        assertTrue(share >= LEAST, what + " held " + share);
        assertTrue(!twoSided || share <= MOST, what + " held " + share);
    }

    private static double within(double halfWidth, Random random) {
        return halfWidth * (2 * random.nextDouble() - 1);
    }

    private static SimulatedOuting outing(World world, Rig rig, boolean zeroFollows, int hertz, Random random)
            throws ConfigException {
        CellCalibration calibration = world.cell.calibrated(random);
        double angle = 90 + within(world.angleDegrees, random);
        double carried = 2 * Math.cos(Math.toRadians(angle / 2));
        return new SimulatedOuting(
                new SimulatedOuting.Errors(world.cell, world.noiseCounts, carried, zeroFollows),
                calibration,
                rig,
                hertz,
                random);
    }

    /** Slack of which each 10 s see another zero, a short pull, slack again. */
    private static void begin(SimulatedOuting outing, World world, Random random) {
        for (int stretch = 0; stretch < 5; stretch++) {
            outing.slack(100, within(world.zeroNewtons, random));
        }
        outing.pull(Shape.filled(50, 8_000), within(world.zeroNewtons, random));
        outing.slack(50, 0);
        for (int stretch = 0; stretch < 6; stretch++) {
            outing.slack(100, within(world.zeroNewtons, random));
        }
    }

    private static Finding.Pull lastPull(SimulatedOuting.Reported reported) {
        List<Finding> pulls = reported.findings().stream()
                .filter(Finding.Pull.class::isInstance)
                .toList();
        return (Finding.Pull) pulls.get(pulls.size() - 1);
    }

    @ParameterizedTest
    @EnumSource(Shape.class)
    void aPullsGreatestWhereNoiseIsMostOfTheError(Shape shape) throws Exception {
        assertPeak(World.NOISE, shape, shape.twoSided);
    }

    @ParameterizedTest
    @EnumSource(World.class)
    void aPullsGreatestWhateverTheError(World world) throws Exception {
        assertPeak(world, Shape.STEP, true);
    }

    private static void assertPeak(World world, Shape shape, boolean twoSided) throws Exception {
        Random random = new Random(1_000L * world.ordinal() + shape.ordinal());
        Rig rig = SimulatedCell.rig(world.angleDegrees);
        int held = 0;
        for (int i = 0; i < OUTINGS; i++) {
            SimulatedOuting outing = outing(world, rig, false, 10, random);
            begin(outing, world, random);
            double top = 6_000 + 29_000 * random.nextDouble();
            outing.pull(shape.tensions(top, random), within(world.zeroNewtons, random));
            outing.slack(50, 0);
            SimulatedOuting.Reported reported = outing.reported();
            Entry.Pull pull = reported.derivation().pull(lastPull(reported));
            held += holds(pull.peakInterval(), top) ? 1 : 0;
        }
        assertShare("greatest " + shape + " " + world, held, OUTINGS, twoSided);
    }

    @ParameterizedTest
    @EnumSource(World.class)
    void aPullsMean(World world) throws Exception {
        Random random = new Random(world.ordinal());
        Rig rig = SimulatedCell.rig(world.angleDegrees);
        int held = 0;
        for (int i = 0; i < OUTINGS; i++) {
            SimulatedOuting outing = outing(world, rig, false, 10, random);
            begin(outing, world, random);
            // short, so that its noise does not average out
            double top = 6_000 + 29_000 * random.nextDouble();
            outing.pull(Shape.filled(6, top), within(world.zeroNewtons, random));
            outing.slack(50, 0);
            SimulatedOuting.Reported reported = outing.reported();
            Finding.Pull finding = lastPull(reported);
            Entry.Pull pull = reported.derivation().pull(finding);
            held += holds(pull.meanInterval(), outing.trueMean(finding.startNumber(), finding.endNumber())) ? 1 : 0;
        }
        assertShare("mean " + world, held, OUTINGS, true);
    }
}
