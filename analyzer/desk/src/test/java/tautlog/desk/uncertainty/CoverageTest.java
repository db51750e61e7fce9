package tautlog.desk.uncertainty;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import tautlog.calibration.CellCalibration;
import tautlog.config.ConfigException;
import tautlog.rig.LineCalibration;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;

/**
 * A world whose truth is known: cells are calibrated with errors, outings have a zero that wanders, noise, an angle that is not
 * quite as written. A stated 95 % interval of a
 * single reading must hold the true tension in 93 to 97 of 100 outings, whichever error is the greatest. Whole figures: {@link
 * FigureCoverageTest}.
 */
class CoverageTest {
    private static final int OUTINGS = 1_000;
    private static final Instrument INSTRUMENT = new Instrument("TL-0001", 1, 0, 7, 1_000_000, 10_000, 8_388_607, 0);
    private static final int STRETCH = 100; // 10 s at 10 Hz

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

        private SimulatedCell cell() {
            return new SimulatedCell(scatterCounts, referencePercent, degree);
        }
    }

    @ParameterizedTest
    @EnumSource(World.class)
    void aStatedIntervalHoldsTheTruthNinetyFiveTimesInAHundred(World world) throws ConfigException {
        Random random = new Random(world.ordinal() + 1L);
        Rig rig = SimulatedCell.rig(world.angleDegrees);
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
            CellCalibration cell = world.cell().calibrated(random);
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

            Interval interval = new Doubt(
                            INSTRUMENT,
                            cell,
                            line,
                            rig,
                            true,
                            slack,
                            Doubt.Zero.PROVEN,
                            new FastPeaks(line, List.of()),
                            new NearPeaks(slack, List.of()))
                    .ofReading(peak);

            return interval.lowNewtons().orElseThrow() <= tension
                    && tension <= interval.highNewtons().orElseThrow();
        }

        private double wandered() {
            return world.zeroNewtons * (2 * random.nextDouble() - 1);
        }

        /** One sample of a cell that carries so much. */
        private int read(double cellNewtons) {
            return (int) Math.round(world.cell().countsAt(cellNewtons) + world.noiseCounts * random.nextGaussian());
        }
    }
}
