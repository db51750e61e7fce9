package tautlog.usage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tautlog.detect.GreatestCount;
import tautlog.detect.Known;
import tautlog.detect.ShaftReadings;
import tautlog.fixtures.Rigs;
import tautlog.rig.DetectSettings;
import tautlog.rig.Driveline;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;

/** Intervals of a slack line at once meter the same as one by one, wherever the meters take them so. */
class SlackIntervalsTest {
    private static final int SEEDS = 600;

    @Test
    void meterTheSame() {
        int taken = 0;
        int refused = 0;
        for (long seed = 0; seed < SEEDS; seed++) {
            Outing outing = new Outing(seed);
            for (int row = 0; row < 25; row++) {
                outing.row();
                assertEquals(outing.oneByOne.hours.reading(), outing.atOnce.hours.reading(), "seed " + seed);
                assertEquals(outing.oneByOne.driveline.use(), outing.atOnce.driveline.use(), "seed " + seed);
            }
            taken += outing.taken;
            refused += outing.refused;
        }
        assertTrue(taken > 2 * SEEDS && refused > 2 * SEEDS, taken + " rows were taken, " + refused + " refused");
    }

    private record Meters(Hours hours, DrivelineMeter driveline) {
        Meters(Instrument instrument, Rig rig, Calibration calibration) {
            this(new Hours(instrument, rig, calibration), new DrivelineMeter(instrument, rig, calibration));
        }

        boolean take(ShaftReadings readings, int atMost, Known clutch) {
            return hours.areWearless(readings, atMost, clutch)
                    && driveline.slackIntervals(readings, atMost, clutch)
                    && hours.slackIntervals(readings, atMost, clutch);
        }

        void takeEach(ShaftReadings readings, int[] greatest, Known clutch) {
            for (int i = 0; i + 1 < readings.size(); i++) {
                long ticks = readings.tick(i + 1) - readings.tick(i);
                GreatestCount count = GreatestCount.of(greatest[i]);
                hours.shaftInterval(ticks, readings.rpm(i), 5, count, clutch);
                driveline.interval(ticks, readings.rpm(i), 5, count, clutch);
            }
        }
    }

    /** Random rows of readings under a random rig, metered both ways. */
    private static final class Outing {
        private final Random random;
        private final Instrument instrument;
        private final Rig rig;
        private final Calibration calibration;
        private final Meters oneByOne;
        private final Meters atOnce;
        private int taken;
        private int refused;

        Outing(long seed) {
            random = new Random(seed);
            long tickHz = random.nextBoolean() ? 1_000_000 : 32_768;
            int fullScale = random.nextInt(8) == 0 ? 100 : 8_388_607;
            instrument = new Instrument("TL-TEST", 1, 0, 7, tickHz, 500_000, fullScale, 6);
            rig = rig();
            calibration = Calibration.of(random.nextBoolean() ? "0" : "-40", random.nextBoolean() ? "0.5" : "3");
            oneByOne = new Meters(instrument, rig, calibration);
            atOnce = new Meters(instrument, rig, calibration);
        }

        private Rig rig() {
            OptionalDouble angle =
                    random.nextInt(4) > 0 ? OptionalDouble.of(1 + random.nextInt(25)) : OptionalDouble.empty();
            OptionalDouble ratedAngle = angle.isPresent() ? OptionalDouble.of(8) : OptionalDouble.empty();
            double ratedTorque = random.nextInt(3) == 0 ? 60 : 1_120;
            Driveline line = new Driveline(0.09, 0.01, 4, 14, 0.75, ratedTorque, 540, angle, ratedAngle);
            return new Rig(
                    "upper",
                    new BigDecimal("20000"),
                    List.of(Rigs.hookup("straight", "8000")),
                    DetectSettings.DEFAULTS,
                    random.nextInt(3) == 0 ? Optional.of(new BigDecimal("300")) : Optional.empty(),
                    random.nextInt(10) == 0 ? Optional.empty() : Optional.of(line));
        }

        void row() {
            ShaftReadings readings = readings(2 + random.nextInt(12));
            Known clutch = Known.values()[random.nextInt(3)];
            int slackBelow = calibration.leastCountsAtOrAbove(rig.detect().slackBelowNewtons());
            boolean isSlack = random.nextInt(4) > 0;
            int atMost = isSlack ? slackBelow - 1 - random.nextInt(1 + random.nextInt(slackBelow + 100)) : 30_000;
            int[] greatest = new int[readings.size()];
            Arrays.setAll(greatest, i -> atMost - random.nextInt(1 + random.nextInt(200)));
            oneByOne.takeEach(readings, greatest, clutch);
            if (isSlack && atOnce.take(readings, atMost, clutch)) {
                taken++;
            } else {
                refused++;
                atOnce.takeEach(readings, greatest, clutch);
            }
        }

        /** Standing, steady, anyhow, or just about to turn. */
        private ShaftReadings readings(int n) {
            int hertz = (int) instrument.tickHz();
            int manner = random.nextInt(4);
            long[] ticks = new long[n];
            double[] rpm = new double[n];
            long tick = random.nextInt(1_000);
            for (int i = 0; i < n; i++) {
                ticks[i] = tick;
                tick += hertz / 20 + 1 + random.nextInt(random.nextInt(5) == 0 ? 2 * hertz : 50);
                rpm[i] = switch (manner) {
                    case 0 -> random.nextInt(70);
                    case 1 -> 540 + random.nextDouble();
                    case 2 -> random.nextInt(1_400);
                    default -> 60 * random.nextInt(3);
                };
            }
            return ShaftReadings.of(ticks, rpm);
        }
    }
}
