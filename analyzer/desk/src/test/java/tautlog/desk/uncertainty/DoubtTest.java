package tautlog.desk.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tautlog.calibration.CellCalibration;
import tautlog.config.ConfigException;
import tautlog.detect.Finding;
import tautlog.detect.Known;
import tautlog.fixtures.Rigs;
import tautlog.rig.LineCalibration;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;

class DoubtTest {
    private static final Instrument INSTRUMENT = new Instrument("TL-0001", 1, 0, 7, 1_000_000, 10_000, 8_388_607, 0);
    private static final Rig RIG = Rigs.withLimit("40000", "20000");
    /** Ten counts a newton, scatter of 20 counts, 10 degrees of freedom, coefficients known exactly. */
    private static final String TOML = """
            schema = 1
            b0_counts = 0.0
            b1_counts_per_newton = 10.0
            [fit]
            residual_sd_counts = 20.0
            degrees_of_freedom = 10
            least_load_n = 0.0
            greatest_load_n = 30000.0
            reference_percent = 0.0
            directions = "both"
            [fit.covariance]
            b0_b0 = 0.0
            b0_b1 = 0.0
            b1_b1 = 0.0
            """;

    private final SlackStudy slack = new SlackStudy(INSTRUMENT, RIG, Calibration.of("0", "0.1"));

    private NearPeaks nearPeaks = new NearPeaks(slack, List.of());
    private FastPeaks fastPeaks = new FastPeaks(Calibration.of("0", "0.1"), List.of());

    private void slackAt(int counts, int seconds) {
        int[] all = new int[10 * seconds];
        Arrays.fill(all, counts);
        slack.tension(0, 0, 0, all, 0, all.length);
    }

    /** @param cell the keys of {@code [cell]} */
    private static Rig rigWithCell(String cell) {
        return Rigs.parsed("""
                schema = 1
                units = "kN"
                [winch]
                name = "upper"
                rated_pull = "40 kN"
                [cell]
                %s
                [[gear]]
                id = "choker"
                kind = "chain"
                wll = "20 kN"
                [[hookup]]
                id = "straight"
                default = true
                items = [ { gear = "choker" } ]
                """.formatted(cell));
    }

    private Doubt doubt(String toml, Finding... findings) throws ConfigException {
        return doubt(Doubt.Zero.PROVEN, toml, findings);
    }

    private Doubt doubt(Doubt.Zero zero, String toml, Finding... findings) throws ConfigException {
        CellCalibration cell = CellCalibration.parse("calibration.toml", toml);
        nearPeaks = new NearPeaks(slack, List.of(findings));
        fastPeaks = new FastPeaks(cell.response(), List.of(findings));
        return new Doubt(INSTRUMENT, cell, cell.response(), RIG, true, slack, zero, fastPeaks, nearPeaks);
    }

    private static void assertAround(double newtons, double half, Interval interval) {
        assertEquals(newtons - half, interval.lowNewtons().orElseThrow(), 1e-3);
        assertEquals(newtons + half, interval.highNewtons().orElseThrow(), 1e-3);
    }

    @Test
    void theScatterOfTheCalibrationIsStudentsT() throws ConfigException {
        // given a zero that was seen to stand still
        slackAt(0, 30);
        // when
        Interval interval = doubt(TOML).ofMean(20_000, false);
        // then: 2.228 (Student's t, 10 degrees of freedom, any printed table) · 20 counts / 10 counts a newton
        assertAround(
                20_000,
                4.456,
                new Interval(interval.lowNewtons(), interval.highNewtons(), interval.largest(), List.of()));
        assertEquals(Optional.of(Cause.CALIBRATION), interval.largest());
        assertTrue(interval.leavesOut().isEmpty(), interval.leavesOut().toString());
    }

    @Test
    void aDisplayThatStepsByTenHoldsHalfAStep() throws ConfigException {
        // given steps of 100 counts (10 N) and residuals that show nothing of it
        slackAt(0, 30);
        String toml =
                TOML.replace("residual_sd_counts = 20.0", "residual_sd_counts = 1e-12\nresolution_counts = 100.0");
        // when
        double reading = doubt(toml).ofReading(200_000).highNewtons().orElseThrow() - 20_000;
        double mean = doubt(toml).ofMean(20_000, false).highNewtons().orElseThrow() - 20_000;
        // then: more than 95 % of ± 5 N; of a mean what the calibration's own readings were rounded to
        assertTrue(reading > 4.75 && reading < 12, "half " + reading);
        assertEquals(2.228 * 10 / Math.sqrt(12), mean, 0.01);
    }

    @Test
    void nothingIsKnownWithoutTheQualityOfTheCalibration() throws ConfigException {
        Interval interval = doubt("zero_counts = 0.0\nnewtons_per_count = 0.1").ofPeak(200_000, 0, 9, false);
        assertTrue(interval.lowNewtons().isEmpty() && interval.highNewtons().isEmpty());
        assertFalse(interval.leavesOut().isEmpty());
    }

    @Test
    void noUpperEndIsKnownBeyondTheGreatestLoadOfTheCalibration() throws ConfigException {
        assertTrue(doubt(TOML).ofPeak(300_000, 0, 9, false).isKnown());
        Interval beyond = doubt(TOML).ofPeak(900_000, 0, 9, false);
        assertTrue(beyond.highNewtons().isEmpty());
        assertTrue(beyond.lowNewtons().orElseThrow() < 30_000, "no more is proven than the greatest load");
    }

    @Test
    void whatAFollowedZeroTookOffIsInTheInterval() throws ConfigException {
        // given a zero that was moved by 194 N, and slack that then reads 0
        slack.zero(0, 1_940, tautlog.sample.ZeroSource.SLACK);
        slackAt(0, 30);
        // when
        double half = doubt(TOML).ofMean(20_000, false).highNewtons().orElseThrow() - 20_000;
        // then: 95 % of ± 194 N and a little
        assertTrue(half > 0.95 * 194, "half " + half);
    }

    @Test
    void theGreatestOfManyNoisyReadingsMayBeLower() throws ConfigException {
        // given noise of ± 100 counts (10 N) in slack
        int[] noise = new int[300];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = i % 2 == 0 ? 100 : -100;
        }
        slack.tension(0, 0, 0, noise, 0, noise.length);
        // when
        double one = doubt(TOML).ofPeak(200_000, 0, 0, false).lowNewtons().orElseThrow();
        double many = doubt(TOML).ofPeak(200_000, 0, 999, false).lowNewtons().orElseThrow();
        // then: nobody counted how many lie near, so all may: Φ(3.88)^1000 = 0.95 and 1.96 are 19.3 N apart, and the
        // calibration adds to it
        assertEquals(19.3, one - many, 0.7);
    }

    @Test
    void theGreatestThatStandsOutOfManyIsNotLower() throws ConfigException {
        // given noise of ± 100 counts in slack, and a pull of 1000 readings of which one is far above the rest
        int[] noise = new int[300];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = i % 2 == 0 ? 100 : -100;
        }
        slack.tension(0, 0, 0, noise, 0, noise.length);
        int[] counts = new int[1_000];
        Arrays.fill(counts, 190_000);
        counts[500] = 200_000;
        Finding pull = new Finding.Pull(
                0,
                999,
                200_000,
                1,
                1_000,
                "straight",
                false,
                200_000,
                0,
                0,
                Known.UNKNOWN,
                false,
                false,
                false,
                false,
                List.of(0L, 0L, 0L, 0L, 0L),
                0,
                0,
                BigInteger.ZERO);
        Doubt doubt = doubt(TOML, pull);
        // when
        nearPeaks.tension(0, 0, 0, counts, 0, counts.length);
        double single = doubt.ofReading(200_000).lowNewtons().orElseThrow();
        double greatest = doubt.ofPeak(200_000, 0, 999, false).lowNewtons().orElseThrow();
        // then
        assertEquals(single, greatest, 1e-6);
    }

    @Test
    void unknownNoiseIsSaid() throws ConfigException {
        List<String> leftOut = doubt(TOML).ofPeak(200_000, 0, 9, false).leavesOut();
        assertTrue(leftOut.stream().anyMatch(words -> words.startsWith("the noise")), leftOut.toString());
    }

    @Test
    void anUnprovenZeroCountsWithTheDriftSettingAndIsSaid() throws ConfigException {
        slackAt(0, 30); // seen, but before the first pull: a log may have hung there
        Interval interval = doubt(Doubt.Zero.UNPROVEN, TOML).ofMean(20_000, false);
        assertEquals(Optional.of(Cause.ZERO), interval.largest());
        assertTrue(interval.highNewtons().orElseThrow() - 20_000 > 0.95 * 200);
        assertTrue(interval.leavesOut().get(0).startsWith("zero unproven"));
    }

    @Test
    void aZeroSeenOffMakesTheIntervalWider() throws ConfigException {
        // given: three stretches of 10 s, 100 N off: a fourth is beyond 100 · ∛(20/4) once in 20
        slackAt(1_000, 30);
        // when
        double half = doubt(TOML).ofMean(20_000, false).highNewtons().orElseThrow() - 20_000;
        // then
        assertEquals(171.0, half, 1.5);
    }

    @Test
    void aZeroThatDriftsOneWayIsThereAtTheOutingsEnd() throws ConfigException {
        // given slack that reads 10 N more every 10 s, and then a pull of 40 s
        for (int stretch = 0; stretch < 6; stretch++) {
            int[] counts = new int[100];
            Arrays.fill(counts, 100 * stretch);
            slack.tension(100L * stretch, 0, 0, counts, 0, counts.length);
        }
        int[] loaded = new int[400];
        Arrays.fill(loaded, 200_000);
        slack.tension(600, 0, 0, loaded, 0, loaded.length);
        // when
        double half = doubt(TOML).ofMean(20_000, false).highNewtons().orElseThrow() - 20_000;
        // then: 95 N at the end, and 4.456 N of calibration
        assertEquals(95 + 4.456, half, 0.2);
    }

    @Test
    void aMeanOfFewReadingsHoldsTheirNoise() throws ConfigException {
        int[] noise = new int[300];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = i % 2 == 0 ? 1_000 : -1_000;
        }
        slack.tension(0, 0, 0, noise, 0, noise.length);
        double half = doubt(TOML).ofMean(20_000, 4, false).highNewtons().orElseThrow() - 20_000;
        // 1.96 · 100 N / √4, and little of the calibration
        assertEquals(98, half, 2);
    }

    @Test
    void anAngleAtTheCellOfUnknownToleranceIsSaidToBeLeftOut() throws ConfigException {
        // given a cell at a fairlead; nobody wrote how far the angle may be off
        Rig rig = rigWithCell("""
                at = "fairlead"
                angle_between_lines_deg = 90
                """);
        CellCalibration cell = CellCalibration.parse("calibration.toml", TOML);
        // when
        Doubt doubt = new Doubt(
                INSTRUMENT,
                cell,
                LineCalibration.of(cell.response(), rig),
                rig,
                true,
                slack,
                Doubt.Zero.PROVEN,
                new FastPeaks(cell.response(), List.of()),
                new NearPeaks(slack, List.of()));
        // then
        assertTrue(doubt.ofMean(10_000, false).leavesOut().get(0).startsWith("the angle at the cell"));
    }

    @Test
    void hysteresisIsSaidToBeLeftOutUnlessLoadsWereComeToBothWays() throws ConfigException {
        String oneWay = doubt(TOML.replace("\"both\"", "\"up\""))
                .ofMean(10_000, false)
                .leavesOut()
                .get(0);
        String unsaid = doubt(TOML.replace("directions = \"both\"\n", ""))
                .ofMean(10_000, false)
                .leavesOut()
                .get(0);

        assertEquals("hysteresis: the calibration's loads were come to from below only", oneWay);
        assertEquals(
                "hysteresis: the calibration does not say that its loads were come to from below and from above",
                unsaid);
    }

    @Test
    void frictionOfTheSheaveBesideACellAtTheDeadEndIsSaidToBeLeftOut() throws ConfigException {
        Rig rig = rigWithCell("""
                at = "dead-end"
                """);
        CellCalibration cell = CellCalibration.parse("calibration.toml", TOML);

        assertTrue(at(rig, cell, true).leavesOut().get(0).startsWith("the friction of the sheave"));
        assertTrue(at(rig, cell, false).leavesOut().isEmpty(), "imported forces are the line's own");
    }

    @ParameterizedTest
    @ValueSource(strings = {"fairlead", "block"})
    void frictionOfTheSheaveThatTheCellHoldsIsSaidToBeLeftOut(String place) throws ConfigException {
        Rig rig = rigWithCell("""
                at = "%s"
                angle_between_lines_deg = 90
                angle_plus_minus_deg = 1
                """.formatted(place));
        CellCalibration cell = CellCalibration.parse("calibration.toml", TOML);

        assertEquals(
                List.of("the friction of the sheave that the cell holds: while the winch pulls, the drum's side pulls"
                        + " about 2 to 4.5 % more"),
                at(rig, cell, true).leavesOut());
        assertTrue(at(rig, cell, false).leavesOut().isEmpty(), "imported forces are the line's own");
    }

    private Interval at(Rig rig, CellCalibration cell, boolean cellCarriesMore) {
        return new Doubt(
                        INSTRUMENT,
                        cell,
                        cell.response(),
                        rig,
                        cellCarriesMore,
                        slack,
                        Doubt.Zero.PROVEN,
                        new FastPeaks(cell.response(), List.of()),
                        new NearPeaks(slack, List.of()))
                .ofMean(10_000, false);
    }

    @Test
    void anEndStopHasNoUpperEnd() throws ConfigException {
        Interval interval = doubt(TOML).ofPeak(200_000, 0, 9, true);
        assertTrue(interval.lowNewtons().isPresent());
        assertTrue(interval.highNewtons().isEmpty());
    }

    @Test
    void aFastRiseMayHaveReachedMoreBetweenTwoReadings() throws ConfigException {
        // given a rise of 5 samples: crest 20000 / cos(π / 20) = 20249.2
        slackAt(0, 30);
        Doubt doubt = doubt(TOML, jolt(100, 105, 200_000));
        fastPeaks.tension(100, 0, 0, new int[] {10_000, 45_000, 90_000, 130_000, 165_000, 200_000}, 0, 6);
        // when
        Interval fast = doubt.ofPeak(200_000, 90, 200, false);
        Interval slow = doubt.ofPeak(199_000, 106, 200, false);
        // then
        assertEquals(20_249.2, fast.highNewtons().orElseThrow(), 5);
        assertEquals(Optional.of(Cause.FAST_PEAK), fast.largest());
        assertEquals(19_900, slow.highNewtons().orElseThrow(), 5);
    }

    @Test
    void aRiseOfFewerThanFourSamplesHasNoUpperEnd() throws ConfigException {
        Doubt doubt = doubt(TOML, jolt(100, 103, 200_000));
        fastPeaks.tension(100, 0, 0, new int[] {10_000, 73_000, 136_000, 200_000}, 0, 4);
        assertTrue(doubt.ofPeak(200_000, 90, 200, false).highNewtons().isEmpty());
    }

    @Test
    void aRiseOfWhichNoReadingWasToldHasNoUpperEnd() throws ConfigException {
        assertTrue(doubt(TOML, jolt(100, 150, 200_000))
                .ofPeak(200_000, 90, 200, false)
                .highNewtons()
                .isEmpty());
    }

    @Test
    void aRiseTooFastLeavesAPullWithoutAnUpperEndWhereALaterReadingIsGreater() throws ConfigException {
        Doubt doubt = doubt(TOML, jolt(100, 101, 200_000));
        fastPeaks.tension(100, 0, 0, new int[] {10_000, 200_000}, 0, 2);

        assertTrue(doubt.ofPeak(200_500, 90, 400, false).highNewtons().isEmpty());
        assertTrue(doubt.ofPeak(200_500, 102, 400, false).isKnown(), "the rise was before");
        assertTrue(doubt.ofPeak(200_500, 90, 100, false).isKnown(), "its foot is no part of it");
    }

    private static Finding jolt(long start, long peakNumber, int peak) {
        return new Finding.Jolt(start, 10_000, peakNumber, peak, "straight", false);
    }
}
