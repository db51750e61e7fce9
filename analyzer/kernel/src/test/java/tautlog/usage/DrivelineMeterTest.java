package tautlog.usage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tautlog.detect.GreatestCount;
import tautlog.detect.Known;
import tautlog.fixtures.Outings;
import tautlog.fixtures.Rigs;
import tautlog.rig.Driveline;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;

class DrivelineMeterTest {
    private static final long SECOND = 1_000_000_000;
    private static final Calibration ONE_NEWTON = Calibration.of("0", "1");

    /** First layer 95.5 mm, last 128.5 mm, 14 · 0.75: 10 kN is 90.952 N m on the first, 122.381 N m on the last. */
    private static DrivelineMeter meter(double ratedTorque) {
        Driveline line = new Driveline(
                0.09, 0.011, 4, 14, 0.75, ratedTorque, 540, OptionalDouble.empty(), OptionalDouble.empty());
        Rig plain = Rigs.withLimit("40000", "20000");
        Rig rig = new Rig(
                plain.winch(),
                plain.ratedPullNewtons(),
                plain.hookups(),
                plain.detect(),
                Optional.empty(),
                Optional.of(line));
        return new DrivelineMeter(Outings.atHertz(100).instrument(), rig, ONE_NEWTON);
    }

    @Test
    void putsTheTorqueBetweenFirstAndLastLayer() {
        DrivelineMeter meter = meter(100);

        meter.interval(1_000_000, 540, 100, GreatestCount.of(10_000), Known.YES);

        DrivelineUse use = meter.use();
        assertEquals(List.of(new TorqueSpeedCell(10, 10, SECOND)), use.firstLayer());
        assertEquals(List.of(new TorqueSpeedCell(13, 10, SECOND)), use.lastLayer());
        assertEquals(90.952, use.torqueNewtonMetres().low(), 0.001);
        assertEquals(122.381, use.torqueNewtonMetres().high(), 0.001);
        assertEquals(0, use.aboveRatingLeastNanos());
        assertEquals(SECOND, use.aboveRatingMostNanos());
    }

    /** 1120.88 N m at 540 rpm is 85 hp, 63.38 kW (table of power and torque of tractors' shafts, computed and seen). */
    @Test
    void worksOutThePowerOfTheReferencesTractor() {
        DrivelineMeter meter = meter(1120.88);
        int newtons = (int) Math.round(1120.88 * 14 * 0.75 / 0.0955);

        meter.interval(1_000_000, 540, 100, GreatestCount.of(newtons), Known.YES);

        assertEquals(63.38, meter.use().powerKilowatts().low(), 0.01);
    }

    @Test
    void saysAtMostWhereNobodyKnowsTheClutch() {
        DrivelineMeter meter = meter(50);

        meter.interval(500_000, 540, 50, GreatestCount.of(10_000), Known.UNKNOWN);

        DrivelineUse use = meter.use();
        assertEquals(SECOND / 2, use.clutchUnknownNanos());
        assertEquals(0, use.torqueNewtonMetres().low());
        assertEquals(122.381, use.torqueNewtonMetres().high(), 0.001);
        assertEquals(0, use.aboveRatingLeastNanos());
        assertEquals(SECOND / 2, use.aboveRatingMostNanos());
    }

    @Test
    void keepsWhatIsNotKnownApart() {
        DrivelineMeter meter = meter(100);

        meter.interval(1_000_000, 540, 0, GreatestCount.of(Integer.MIN_VALUE), Known.YES);
        meter.interval(2_500_000, 540, 100, GreatestCount.of(10_000), Known.NO);
        meter.interval(1_000_000, 59.9, 100, GreatestCount.of(30_000), Known.YES);

        DrivelineUse use = meter.use();
        assertEquals(SECOND, use.tensionUnknownNanos());
        assertEquals(SECOND, use.aboveRatingMostNanos(), "may have been above");
        assertEquals(SECOND, use.disengagedNanos(), "a reading speaks for a second at most");
        assertEquals(SECOND, use.stillNanos());
        assertEquals(List.of(), use.firstLayer());
        assertEquals(Extent.NONE, use.torqueNewtonMetres());
        assertEquals(2 * SECOND, use.turningNanos());
    }

    @Test
    void doesNotBoundWhatTheConverterCouldNotShow() {
        DrivelineMeter meter = meter(1e9);

        meter.interval(1_000_000, 540, 100, GreatestCount.of(8_388_607), Known.YES);

        assertTrue(meter.use().torqueNewtonMetres().atLeast());
        assertEquals(SECOND, meter.use().aboveRatingMostNanos());
    }

    @Test
    void sortsTensionBelowNothingAndBeyondEverything() {
        DrivelineMeter meter = meter(10);

        meter.interval(1_000_000, 2_000, 100, GreatestCount.of(-500), Known.YES);
        meter.interval(1_000_000, 2_000, 100, GreatestCount.of(500_000), Known.YES);

        assertEquals(
                List.of(
                        new TorqueSpeedCell(0, TorqueSpeedCell.MOST_SPEED, SECOND),
                        new TorqueSpeedCell(TorqueSpeedCell.MOST_TORQUE, TorqueSpeedCell.MOST_SPEED, SECOND)),
                meter.use().firstLayer());
    }

    @Test
    void givesTheSameByBounds() {
        Random random = new Random(1);
        for (int round = 0; round < 300; round++) {
            double ratedTorque = 0.1 + 100 * random.nextDouble();
            DrivelineMeter exact = meter(ratedTorque);
            DrivelineMeter bounded = meter(ratedTorque);
            for (int i = 0; i < 50; i++) {
                int greatest = random.nextInt(20) == 0 ? random.nextInt(20_000) : random.nextInt(900) - 100;
                int atMost = greatest + random.nextInt(30);
                double rpm = 40 + random.nextInt(700);
                int samples = random.nextInt(10);
                Known clutch = Known.values()[random.nextInt(3)];
                exact.interval(300_000, rpm, samples, GreatestCount.of(greatest), clutch);
                bounded.interval(300_000, rpm, samples, new Bounded(greatest, atMost), clutch);
            }
            assertEquals(exact.use(), bounded.use());
        }
    }

    private record Bounded(int exactly, int atMost) implements GreatestCount {}

    @Test
    void saysThatARigWithoutADrumIsNotDescribed() {
        DrivelineMeter meter =
                new DrivelineMeter(Outings.atHertz(100).instrument(), Rigs.withLimit("40000", "20000"), ONE_NEWTON);

        assertEquals(DrivelineUse.NOT_DESCRIBED, meter.use());
        assertEquals(2, meter.use().plus(meter.use()).outingsNotDescribed());
    }
}
