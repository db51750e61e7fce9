package tautlog.desk.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import tautlog.calibration.CellCalibration;
import tautlog.config.ConfigException;
import tautlog.fixtures.Rigs;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;

/** Ten counts a newton, 10 degrees of freedom, loads up to 30 kN; what is not said to be in doubt is exact. */
class RelatedTensionsTest {
    private static final Instrument INSTRUMENT = new Instrument("TL-0001", 1, 0, 7, 1_000_000, 10_000, 8_388_607, 0);
    private static final Rig RIG = Rigs.withLimit("40000", "20000");
    /** Student's t, 97.5 %, 10 degrees of freedom: any printed table. */
    private static final double T10 = 2.228;

    private final SlackStudy slack = new SlackStudy(INSTRUMENT, RIG, Calibration.of("0", "0.1"));
    private Doubt.Zero zero = Doubt.Zero.PROVEN;
    private double scatterCounts;
    private double referencePercent;
    private double b0Variance;
    private double b1Variance;

    private void slackAt(int... counts) {
        int[] all = new int[300];
        Arrays.setAll(all, i -> counts[i % counts.length]);
        slack.tension(0, 0, 0, all, 0, all.length);
    }

    private RelatedTensions related() throws ConfigException {
        String toml = """
                schema = 1
                b0_counts = 0.0
                b1_counts_per_newton = 10.0
                [fit]
                residual_sd_counts = %s
                degrees_of_freedom = 10
                least_load_n = 0.0
                greatest_load_n = 30000.0
                reference_percent = %s
                directions = "both"
                [fit.covariance]
                b0_b0 = %s
                b0_b1 = 0.0
                b1_b1 = %s
                """.formatted(scatterCounts, referencePercent, b0Variance, b1Variance);
        CellCalibration cell = CellCalibration.parse("calibration.toml", toml);
        return new Doubt(
                        INSTRUMENT,
                        cell,
                        cell.response(),
                        RIG,
                        true,
                        slack,
                        zero,
                        new FastPeaks(cell.response(), List.of()),
                        new NearPeaks(slack, List.of()))
                .related();
    }

    /** A rise of 10,000 samples, of which sampling hides nothing. */
    private static Interval slowRise(RelatedTensions related, int foot, int peak) {
        return related.rise(new Extreme(foot, 0, 1), new Extreme(peak, 10_000, 1), false);
    }

    private static Bounds slowFactor(RelatedTensions related, int peak, int settled) {
        return related.factor(new Extreme(0, 0, 1), new Extreme(peak, 10_000, 1), settled, 500, false);
    }

    private static void assertAround(double newtons, double half, double tolerance, Interval interval) {
        assertEquals(newtons - half, interval.lowNewtons().orElseThrow(), tolerance);
        assertEquals(newtons + half, interval.highNewtons().orElseThrow(), tolerance);
    }

    @Test
    void aZeroThatIsOffCancelsInARise() throws ConfigException {
        // given a zero that is off by up to 200 N (unproven), b0 by 20 counts (2 N)
        slackAt(0);
        zero = Doubt.Zero.UNPROVEN;
        b0Variance = 400;
        scatterCounts = 20;
        // when: 1 to 20 kN
        Interval rise = slowRise(related(), 10_000, 200_000);
        // then: the scatter of two readings alone, 2.228 · 20 counts · √2 / 10
        assertAround(19_000, T10 * 2 * Math.sqrt(2), 0.01, rise);
        assertEquals(Optional.of(Cause.CALIBRATION), rise.largest());
        assertFalse(rise.leavesOut().stream().anyMatch(words -> words.startsWith("zero unproven")));
    }

    @Test
    void aWrongScaleIsAsWrongInARise() throws ConfigException {
        // given a slope known to 1e-4 of itself
        slackAt(0);
        b1Variance = 1e-6;
        // then: 19 kN · 1e-4 · 2.228, and two halves of a count (0.05 N each) that hardly show
        assertAround(19_000, 1.9 * T10, 0.01, slowRise(related(), 10_000, 200_000));
    }

    @Test
    void noiseLiftsThePeakAndLowersTheFoot() throws ConfigException {
        // given noise of ± 100 counts (10 N; 100 · √(100/99) for a stretch of 100 readings)
        slackAt(100, -100);
        double sigma = 10 * Math.sqrt(100 / 99.0);
        // when
        RelatedTensions related = related();
        double single = slowRise(related, 10_000, 200_000).lowNewtons().orElseThrow();
        double among = related.rise(new Extreme(10_000, 0, 100), new Extreme(200_000, 10_000, 250), false)
                .lowNewtons()
                .orElseThrow();
        // then
        double lift = sigma * (Math.sqrt(2 * Math.log(100)) + Math.sqrt(2 * Math.log(250)));
        assertEquals(lift, single - among, 0.001);
        assertAround(19_000, 1.96 * sigma * Math.sqrt(2), 0.05, slowRise(related, 10_000, 200_000));
    }

    @Test
    void samplingMayHideSomeOfAFastRise() throws ConfigException {
        slackAt(0);
        Interval rise = related().rise(new Extreme(0, 100, 1), new Extreme(200_000, 105, 1), false);
        // 20 kN / cos(π / 20)
        assertEquals(20_249.2, rise.highNewtons().orElseThrow(), 0.3);
        assertEquals(Optional.of(Cause.FAST_PEAK), rise.largest());
    }

    @Test
    void noUpperEndIsKnownOfARiseOfThreeSamplesOrToAnEndStopOrBeyondTheCalibration() throws ConfigException {
        slackAt(0);
        RelatedTensions related = related();
        Extreme foot = new Extreme(0, 100, 1);

        for (Interval rise : List.of(
                related.rise(foot, new Extreme(200_000, 103, 1), false),
                related.rise(foot, new Extreme(200_000, 900, 1), true),
                related.rise(foot, new Extreme(400_000, 900, 1), false))) {
            assertTrue(rise.lowNewtons().isPresent());
            assertTrue(rise.highNewtons().isEmpty());
            assertTrue(
                    rise.leavesOut().get(0).startsWith("above it"),
                    rise.leavesOut().toString());
        }
        // 30 kN, the greatest load, is all that is proven of 40
        assertEquals(
                30_000,
                related.rise(foot, new Extreme(400_000, 900, 1), false)
                        .lowNewtons()
                        .orElseThrow(),
                0.2);
        Interval beyond = related.rise(new Extreme(310_000, 0, 1), new Extreme(400_000, 900, 1), false);
        assertTrue(beyond.lowNewtons().isEmpty() && beyond.highNewtons().isEmpty());
    }

    @Test
    void theTimeOfARiseIsKnownToASampleEitherWay() {
        Interval rise =
                new Interval(OptionalDouble.of(18_900), OptionalDouble.of(19_100), Optional.of(Cause.NOISE), List.of());

        Bounds rate = RelatedTensions.riseRate(rise, 10, 0.002);

        // 18900 / (11 · 0.002), 19100 / (9 · 0.002)
        assertEquals(859_090.9, rate.low().orElseThrow(), 0.1);
        assertEquals(1_061_111.1, rate.high().orElseThrow(), 0.1);
        assertEquals(Optional.of(Cause.FAST_PEAK), rate.largest());
        // of a thousand samples the forces say more: 38000 / 1000 < 200
        assertEquals(
                Optional.of(Cause.NOISE),
                RelatedTensions.riseRate(rise, 1_000, 0.002).largest());
    }

    @Test
    void aWrongScaleCancelsInAFactor() throws ConfigException {
        // given reference loads of ± 2 % and a slope known to 1 % of itself: a peak is off by hundreds of newtons
        slackAt(0);
        referencePercent = 2;
        b1Variance = 0.01;
        RelatedTensions related = related();

        Bounds factor = slowFactor(related, 200_000, 50_000);

        assertEquals(4, factor.low().orElseThrow(), 0.001);
        assertEquals(4, factor.high().orElseThrow(), 0.001);
    }

    @Test
    void aZeroThatIsOffMovesPeakAndLevelAlike() throws ConfigException {
        // given three stretches of slack 100 N off: one more lies within (20/4)^(1/3) · 100 N = 171.00 N with 95 %
        slackAt(1_000);

        Bounds factor = slowFactor(related(), 200_000, 50_000);

        // (20000 + 171.00) / (5000 + 171.00), (20000 − 171.00) / (5000 − 171.00)
        assertEquals(3.90079, factor.low().orElseThrow(), 0.0002);
        assertEquals(4.10623, factor.high().orElseThrow(), 0.0002);
        assertEquals(Optional.of(Cause.ZERO), factor.largest());
    }

    @Test
    void aLevelThatMayBeNothingOpensTheFactorAbove() throws ConfigException {
        slackAt(1_000);

        // 100 N with a zero of ± 171 N
        Bounds factor = slowFactor(related(), 200_000, 1_000);

        assertTrue(factor.high().isEmpty());
        assertEquals(20_171.0 / 271.0, factor.low().orElseThrow(), 0.1);
        assertTrue(factor.leavesOut().get(0).startsWith("above it: the level"));
    }

    @Test
    void aFactorOfAPeakThatIsALowerBoundHasNoUpperEnd() throws ConfigException {
        slackAt(0);
        Extreme foot = new Extreme(0, 0, 1);

        assertTrue(related()
                .factor(foot, new Extreme(200_000, 900, 1), 50_000, 500, true)
                .high()
                .isEmpty());
        assertTrue(related()
                .factor(foot, new Extreme(200_000, 3, 1), 50_000, 500, false)
                .high()
                .isEmpty());
    }

    @Test
    void aMedianOfManyReadingsIsLessNoisyThanOne() throws ConfigException {
        slackAt(100, -100);
        double sigma = 10 * Math.sqrt(100 / 99.0);

        // 1.96 · σ · √(π / 2 / 20); half a count and a zero of 0 N hardly show
        assertAround(
                5_000,
                1.96 * sigma * Math.sqrt(Math.PI / 2 / 20),
                0.01,
                related().settled(50_000, 20));
        assertAround(5_000, 1.96 * sigma, 0.01, related().settled(50_000, 1));
    }

    @Test
    void nothingIsKnownWithoutTheQualityOfTheCalibration() throws ConfigException {
        CellCalibration cell = CellCalibration.parse("calibration.toml", "zero_counts = 0.0\nnewtons_per_count = 0.1");
        RelatedTensions related = new Doubt(
                        INSTRUMENT,
                        cell,
                        cell.response(),
                        RIG,
                        true,
                        slack,
                        Doubt.Zero.PROVEN,
                        new FastPeaks(cell.response(), List.of()),
                        new NearPeaks(slack, List.of()))
                .related();

        assertTrue(slowRise(related, 0, 200_000).lowNewtons().isEmpty());
        assertTrue(related.settled(50_000, 20).lowNewtons().isEmpty());
        assertTrue(slowFactor(related, 200_000, 50_000).low().isEmpty());
        assertTrue(RelatedTensions.riseRate(slowRise(related, 0, 200_000), 10, 0.002)
                .low()
                .isEmpty());
    }

    @Test
    void anImpulseIsAMeanTimesItsTimeAndOpenWhereReadingsAreMissing() {
        Interval mean =
                new Interval(OptionalDouble.of(19_900), OptionalDouble.of(20_100), Optional.of(Cause.ZERO), List.of());

        assertEquals(199_000, Bounds.impulse(mean, 10, false).low().orElseThrow(), 1e-6);
        assertEquals(201_000, Bounds.impulse(mean, 10, false).high().orElseThrow(), 1e-6);
        assertTrue(Bounds.impulse(mean, 10, true).high().isEmpty());
    }

    @Test
    void aShareOfALimitThatIsKnownAsAtMostHasNoUpperEnd() {
        Interval tension =
                new Interval(OptionalDouble.of(19_000), OptionalDouble.of(21_000), Optional.of(Cause.ZERO), List.of());

        assertEquals(1.05, Bounds.share(tension, 20_000, false).high().orElseThrow(), 1e-12);
        assertEquals(0.95, Bounds.share(tension, 20_000, true).low().orElseThrow(), 1e-12);
        assertTrue(Bounds.share(tension, 20_000, true).high().isEmpty());
    }
}
