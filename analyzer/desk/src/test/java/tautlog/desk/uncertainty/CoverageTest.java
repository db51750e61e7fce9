package tautlog.desk.uncertainty;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tautlog.calibration.CellCalibration;
import tautlog.config.ConfigException;
import tautlog.desk.calibration.ResponseFit;
import tautlog.fixtures.Rigs;
import tautlog.rig.LineCalibration;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;

/**
 * A world whose truth is known: cells are calibrated with errors, outings have a zero that wanders, noise, an angle that is not
 * quite as written. Single readings are judged; the greatest of many has a lower end that goes down further. A stated 95 % interval must hold the true tension in 93 to 97 of 100 outings, whichever error is the greatest.
 */
class CoverageTest {
    private static final int OUTINGS = 1_500;
    private static final Instrument INSTRUMENT = new Instrument("TL-0001", 1, 0, 7, 1_000_000, 10_000, 8_388_607, 0);
    private static final int STRETCH = 100; // 10 s at 10 Hz
    private static final double[] LOADS = {0, 10_000, 20_000, 30_000, 40_000, 50_000, 60_000};

    /** What is wrong in a world, as it is there: standard deviations, half widths, percent. */
    private enum World {
        SCATTER(25, 0, 0, 1, 0, 1),
        SCATTER_ROUND_A_CURVE(25, 0, 0, 1, 0, 2),
        REFERENCE(2, 0.6, 0, 1, 0, 1),
        ZERO(2, 0, 150, 1, 0, 1),
        ZERO_AND_SCATTER(40, 0, 50, 1, 0, 1),
        NOISE(2, 0, 0, 60, 0, 1),
        ANGLE(2, 0, 0, 1, 3, 1),
        ALL_OF_THEM(20, 0.2, 60, 20, 1, 2);

        private final double scatterCounts;
        private final double referencePercent;
        private final double zeroNewtons;
        private final double noiseCounts;
        private final double angleDegrees;
        private final int degree;

        World(
                double scatterCounts,
                double referencePercent,
                double zeroNewtons,
                double noiseCounts,
                double angleDegrees,
                int degree) {
            this.scatterCounts = scatterCounts;
            this.referencePercent = referencePercent;
            this.zeroNewtons = zeroNewtons;
            this.noiseCounts = noiseCounts;
            this.angleDegrees = angleDegrees;
            this.degree = degree;
        }

        private Rig rig() {
            return Rigs.parsed(String.join(
                    "\n",
                    "schema = 1",
                    "units = \"kN\"",
                    "[winch]",
                    "name = \"upper\"",
                    "rated_pull = \"40 kN\"",
                    "[cell]",
                    "at = \"fairlead\"",
                    "angle_between_lines_deg = 90",
                    angleDegrees > 0 ? "angle_plus_minus_deg = " + angleDegrees : "",
                    "[[gear]]",
                    "id = \"choker\"",
                    "kind = \"chain\"",
                    "wll = \"20 kN\"",
                    "[[hookup]]",
                    "id = \"straight\"",
                    "default = true",
                    "items = [ { gear = \"choker\" } ]"));
        }

        private double countsAt(double cellNewtons) {
            return 4_000 + 2 * cellNewtons + (degree == 1 ? 0 : 4e-7 * cellNewtons * cellNewtons);
        }
    }

    @ParameterizedTest
    @EnumSource(World.class)
    void aStatedIntervalHoldsTheTruthNinetyFiveTimesInAHundred(World world) throws ConfigException {
        Random random = new Random(world.ordinal() + 1L);
        Rig rig = world.rig();
        int held = 0;
        for (int outing = 0; outing < OUTINGS; outing++) {
            held += new Outing(world, rig, random).holdsTheTruth() ? 1 : 0;
        }
        double share = (double) held / OUTINGS;
        assertTrue(share > 0.93 && share < 0.97, world + " held " + share);
    }

    /** A calibration with its errors, then an outing with its own. */
    private record Outing(World world, Rig rig, Random random) {
        boolean holdsTheTruth() throws ConfigException {
            CellCalibration cell = calibrated();
            Calibration line = LineCalibration.of(cell.response(), rig);
            SlackStudy slack = new SlackStudy(INSTRUMENT, rig, line);
            double tension = 5_000 + 30_000 * random.nextDouble();
            double trueAngle = 90 + world.angleDegrees * (2 * random.nextDouble() - 1);
            double carried = 2 * Math.cos(Math.toRadians(trueAngle / 2));
            for (int stretch = 0; stretch < 8; stretch++) {
                int[] counts = new int[STRETCH];
                double zero = wandered();
                for (int i = 0; i < STRETCH; i++) {
                    counts[i] = read(zero * Math.sqrt(2));
                }
                slack.tension((long) stretch * STRETCH, 0, 0, counts, 0, STRETCH);
            }
            double scatter = world.scatterCounts * random.nextGaussian();
            int peak = (int) Math.round(read(tension * carried + wandered() * Math.sqrt(2)) + scatter);

            Interval interval =
                    new Doubt(INSTRUMENT, cell, line, rig, true, slack, Doubt.Zero.PROVEN, List.of()).ofReading(peak);

            return interval.lowNewtons().orElseThrow() <= tension
                    && tension <= interval.highNewtons().orElseThrow();
        }

        private double wandered() {
            return world.zeroNewtons * (2 * random.nextDouble() - 1);
        }

        /** One sample of a cell that carries so much. */
        private int read(double cellNewtons) {
            return (int) Math.round(world.countsAt(cellNewtons) + world.noiseCounts * random.nextGaussian());
        }

        private CellCalibration calibrated() throws ConfigException {
            double[] loads = new double[2 * LOADS.length];
            double[] counts = new double[loads.length];
            double wrong = 1 + world.referencePercent / 200 * random.nextGaussian();
            for (int i = 0; i < loads.length; i++) {
                loads[i] = LOADS[i % LOADS.length];
                counts[i] = world.countsAt(loads[i] * wrong) + world.scatterCounts * random.nextGaussian();
            }
            ResponseFit fit = ResponseFit.of(loads, counts, world.degree);
            return CellCalibration.parse("calibration.toml", toml(fit));
        }

        private String toml(ResponseFit fit) {
            StringBuilder text = new StringBuilder("schema = 1\n");
            text.append("b0_counts = ").append(fit.coefficients().get(0)).append('\n');
            text.append("b1_counts_per_newton = ")
                    .append(fit.coefficients().get(1))
                    .append('\n');
            if (world.degree == 2) {
                text.append("b2_counts_per_newton2 = ")
                        .append(fit.coefficients().get(2))
                        .append('\n');
            }
            text.append("[fit]\nresidual_sd_counts = ").append(fit.residualSd());
            text.append("\ndegrees_of_freedom = ").append(fit.degreesOfFreedom());
            text.append("\nleast_load_n = 0.0\ngreatest_load_n = 60000.0\n");
            if (world.referencePercent > 0) {
                text.append("reference_percent = ")
                        .append(world.referencePercent)
                        .append('\n');
            }
            text.append("[fit.covariance]\n");
            int n = world.degree + 1;
            for (int row = 0; row < n; row++) {
                for (int column = row; column < n; column++) {
                    text.append("b" + row + "_b" + column + " = ")
                            .append(fit.covariance().get(row * n + column))
                            .append('\n');
                }
            }
            return text.toString();
        }
    }
}
