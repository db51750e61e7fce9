package tautlog.desk.uncertainty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tautlog.config.ConfigException;
import tautlog.desk.report.Entry;

/**
 * Rises on a noisy level: the greatest reading of the half second after one is a matter of noise and tells nothing of how fast the line
 * rose.
 */
class NoisyRiseTest {
    private static final int OUTINGS = 60;
    private static final double NOISE_COUNTS = 20;

    /** 20 s of slack, then the tensions of a pull, then slack. */
    private static SimulatedOuting.Reported reported(int hertz, Random random, double... tensions)
            throws ConfigException {
        SimulatedCell cell = new SimulatedCell(2, 0, 1);
        SimulatedOuting outing = new SimulatedOuting(
                new SimulatedOuting.Errors(cell, NOISE_COUNTS, SimulatedCell.CARRIED, false),
                cell.calibrated(random),
                SimulatedCell.rig(0),
                hertz,
                random);
        outing.slack(20 * hertz, 0);
        outing.pull(tensions, 0);
        outing.slack(5 * hertz, 0);
        return outing.reported();
    }

    private static double[] held(int samples, double newtons) {
        double[] tensions = new double[samples];
        Arrays.fill(tensions, newtons);
        return tensions;
    }

    private static double[] joined(double[]... parts) {
        return Arrays.stream(parts).flatMapToDouble(Arrays::stream).toArray();
    }

    private static double[] rise(int samples, DoubleUnaryOperator ofPart) {
        return IntStream.rangeClosed(1, samples)
                .mapToDouble(i -> ofPart.applyAsDouble((double) i / samples))
                .toArray();
    }

    /** In one to three samples; at 10 Hz in one or two, for a jolt has to rise within two there. */
    private static double[] fast(int outing, int hertz, double from, double to) {
        return rise(outing % (hertz == 10 ? 2 : 3) + 1, part -> from + (to - from) * part);
    }

    @ParameterizedTest
    @ValueSource(ints = {10, 50, 100, 500})
    void aJoltWithinThreeSamplesHasNoUpperEnd(int hertz) throws ConfigException {
        Random random = new Random(hertz);
        for (int i = 0; i < OUTINGS; i++) {
            SimulatedOuting.Reported reported = reported(
                    hertz,
                    random,
                    joined(
                            rise(3 * hertz, part -> 3_000 * part),
                            held(2 * hertz, 3_000),
                            fast(i, hertz, 3_000, 13_000),
                            held(3 * hertz, 13_000)));

            Entry.Jolt jolt = reported.jolts().get(0);
            assertFalse(jolt.resolved(), "outing " + i);
            assertOpen(jolt.riseInterval());
            assertOpen(jolt.peakInterval());
            assertOpen(reported.pulls().get(0).peakInterval());
            assertTrue(reported.pulls().get(0).mayBeOver());
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {10, 50, 100, 500})
    void aShockWithinThreeSamplesHasNoUpperEnd(int hertz) throws ConfigException {
        Random random = new Random(hertz);
        for (int i = 0; i < OUTINGS; i++) {
            SimulatedOuting.Reported reported = reported(
                    hertz,
                    random,
                    joined(fast(i, hertz, 0, 13_000), held(6 * hertz / 10, 13_000), held(2 * hertz, 4_000)));

            Entry.Shock shock = reported.shocks().get(0);
            assertFalse(shock.resolved(), "outing " + i);
            assertOpen(shock.peakInterval());
            assertTrue(shock.riseRateBounds().high().isEmpty());
            assertTrue(shock.factorBounds().high().isEmpty());
            assertOpen(reported.pulls().get(0).peakInterval());
        }
    }

    private static void assertOpen(Interval interval) {
        assertTrue(interval.lowNewtons().isPresent() && interval.highNewtons().isEmpty(), interval.toString());
        assertEquals(
                1, interval.leavesOut().stream().filter(Doubt.TOO_FAST::equals).count());
    }

    @ParameterizedTest
    @ValueSource(ints = {50, 100, 500})
    void aHalfSineOfTwentySamplesKeepsItsUpperEnd(int hertz) throws ConfigException {
        Random random = new Random(hertz);
        for (int i = 0; i < OUTINGS; i++) {
            double[] sine = rise(20, part -> 13_000 * Math.sin(Math.PI / 2 * part));
            SimulatedOuting.Reported snapped =
                    reported(hertz, random, joined(sine, held(6 * hertz / 10, 13_000), held(2 * hertz, 4_000)));
            Entry.Shock shock = snapped.shocks().get(0);
            assertTrue(shock.resolved() && shock.peakInterval().isKnown(), "outing " + i);
            assertTrue(snapped.pulls().get(0).peakInterval().isKnown());
            assertTrue(shock.factorBounds().high().isPresent());
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {100, 500})
    void aJoltOfTwentySamplesKeepsItsUpperEnd(int hertz) throws ConfigException {
        Random random = new Random(hertz);
        for (int i = 0; i < OUTINGS; i++) {
            double[] sine = rise(20, part -> 3_000 + 10_000 * Math.sin(Math.PI / 2 * part));
            SimulatedOuting.Reported reported = reported(
                    hertz,
                    random,
                    joined(
                            rise(3 * hertz, part -> 3_000 * part),
                            held(2 * hertz, 3_000),
                            sine,
                            held(3 * hertz, 13_000)));
            Entry.Jolt jolt = reported.jolts().get(0);
            assertTrue(jolt.resolved() && jolt.riseInterval().isKnown(), "outing " + i);
            assertTrue(jolt.peakInterval().isKnown());
        }
    }
}
