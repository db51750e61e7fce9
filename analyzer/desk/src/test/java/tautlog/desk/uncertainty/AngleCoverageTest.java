package tautlog.desk.uncertainty;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tautlog.calibration.CellCalibration;
import tautlog.config.ConfigException;
import tautlog.rig.LineCalibration;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;

/**
 * As {@link CoverageTest}, where the angle at the cell is most of the error or half of it: equally likely anywhere in its interval, which ends
 * at parallel lines. An interval holds the truth in 93 of 100 outings or more, in 97 at most where the angle's own does not end there, and
 * always the figure itself.
 */
class AngleCoverageTest {
    private static final int OUTINGS = 800;
    private static final Instrument INSTRUMENT = new Instrument("TL-0001", 1, 0, 7, 1_000_000, 10_000, 8_388_607, 0);
    private static final int LEVEL = 20;

    private int readings;
    private int levels;
    private int rises;

    @ParameterizedTest
    @CsvSource({
        "90, 3, 2",
        "60, 20, 2",
        "120, 20, 2",
        "20, 20, 2",
        "20, 30, 2",
        "0, 20, 2",
        "5, 5, 2",
        "140, 10, 2",
        "60, 20, 1500",
        "120, 20, 1500",
        "20, 20, 300",
        "20, 30, 300",
        "0, 20, 300",
        "140, 10, 700"
    })
    void anIntervalHoldsTheTruthWhateverTheAngleBetweenTheLines(double angle, double off, double scatterCounts)
            throws ConfigException {
        Random random = new Random(Math.round(angle + off + scatterCounts));
        Rig rig = SimulatedCell.rig(angle, off);
        for (int outing = 0; outing < OUTINGS; outing++) {
            judge(new World(rig, new SimulatedCell(scatterCounts, 0, 1), angle, off, random));
        }
        for (int held : new int[] {readings, levels, rises}) {
            double share = (double) held / OUTINGS;
            assertTrue(share >= 0.93 && (angle <= off || share <= 0.97), this::shares);
        }
    }

    private String shares() {
        return String.format(Locale.ROOT, "of %d held %d, %d, %d", OUTINGS, readings, levels, rises);
    }

    private void judge(World world) throws ConfigException {
        CellCalibration cell = world.cell.calibrated(world.random);
        Calibration line = LineCalibration.of(cell.response(), world.rig);
        SlackStudy slack = new SlackStudy(INSTRUMENT, world.rig, line);
        int[] zero = new int[100]; // 10 s at 10 Hz
        Arrays.fill(zero, 4_000);
        for (int stretch = 0; stretch < 8; stretch++) {
            slack.tension(100L * stretch, 0, 0, zero, 0, zero.length);
        }
        Doubt doubt = new Doubt(
                INSTRUMENT,
                cell,
                line,
                world.rig,
                true,
                slack,
                Doubt.Zero.PROVEN,
                new FastPeaks(line, List.of()),
                new NearPeaks(slack, List.of()));
        double tension = 15_000 + 5_000 * world.random.nextDouble();
        double carried = world.carried();
        int count = world.read(tension * carried);
        int foot = world.read(1_000 * carried);

        readings += holds(doubt.ofReading(count), line.newtons(count), tension);
        levels += holds(doubt.related().settled(count, LEVEL), line.newtons(count), tension);
        Interval rise = doubt.related().rise(new Extreme(foot, 0, 1), new Extreme(count, 10_000, 1), false);
        rises += holds(rise, line.newtons(count) - line.newtons(foot), tension - 1_000);
    }

    private static int holds(Interval interval, double figure, double truth) {
        double low = interval.lowNewtons().orElseThrow();
        double high = interval.highNewtons().orElseThrow();
        assertTrue(low <= figure && figure <= high, () -> figure + " is outside " + interval);
        return low <= truth && truth <= high ? 1 : 0;
    }

    private record World(Rig rig, SimulatedCell cell, double angle, double off, Random random) {
        /** By how much the cell carries more than the line; the angle is the same throughout an outing. */
        double carried() {
            double narrowest = Math.max(0, angle - off);
            double trueAngle = narrowest + random.nextDouble() * (angle + off - narrowest);
            return 2 * Math.cos(Math.toRadians(trueAngle / 2));
        }

        int read(double newtons) {
            return (int) Math.round(cell.countsAt(newtons) + cell.scatterCounts() * random.nextGaussian());
        }
    }
}
