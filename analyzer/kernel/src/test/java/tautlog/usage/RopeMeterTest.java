package tautlog.usage;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import tautlog.fatigue.Rainflow;
import tautlog.fixtures.Rigs;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;

/** Damage sums of the published rainflow cases, ASTM E1049-85 (beside the tests of {@code tautlog.fatigue}). */
class RopeMeterTest {
    /** 84.43 kN · 0.8 / 2 for 11 mm 6x36 IWRC 1960: what the example's rope may carry. */
    private static final Rig RIG = Rigs.parsed(Rigs.exampleText());

    private static final double ALLOWED =
            RIG.hookups().get(0).items().get(0).allowedNewtons().doubleValue();

    /** Units of the history are tenths of the rope's working load limit, in steps of a millionth of a unit. */
    private static RopeUse use(double... history) {
        Calibration calibration = Calibration.of("0", String.valueOf(ALLOWED / 10 / 1_000_000));
        RopeMeter meter = new RopeMeter(RIG, calibration);
        double[] counts =
                Arrays.stream(history).map(unit -> Math.rint(unit * 1_000_000)).toArray();
        Rainflow.count(
                counts,
                (from, to, fromIndex, toIndex, halves) ->
                        meter.cycle(Math.round(Math.abs(to - from)), Math.round(from + to), halves));
        return meter.uses().get(0);
    }

    /** Σ n (range/10)^4.09, ranges and counts as printed. */
    private static double sum(double... rangesAndCounts) {
        double sum = 0;
        for (int i = 0; i < rangesAndCounts.length; i += 2) {
            sum += rangesAndCounts[i + 1] * Math.exp(4.09 * Math.log(rangesAndCounts[i] / 10));
        }
        return sum;
    }

    @Test
    void addsUpTheStandardsOwnExample() {
        // case A, figure 6: 3 → 0.5, 4 → 1.5, 6 → 0.5, 8 → 1.0, 9 → 0.5. Worked out apart, in 30 digits: 0.3^4.09 =
        // 0.007268184,
        // 0.4^4.09 = 0.023573570, 0.6^4.09 = 0.123776619, 0.8^4.09 = 0.401456087, 0.9^4.09 = 0.649907971
        RopeUse use = use(-2, 1, -3, 5, -1, 3, -4, 4, -2);

        assertEquals(0.827_292_829, use.minerCycles(), 1e-8);
        assertEquals(List.of(0L, 0L, 1L, 3L, 0L, 1L, 0L, 2L, 1L, 0L, 0L, 0L, 0L), use.halfCycles());
        assertEquals(4.0, use.cycles());
    }

    @Test
    void addsUpAHistoryWithPointsThatAreNoReversals() {
        RopeUse use = use(-1.5, 1, -3, 10, -1, 3, -8, 4, -2, 6, -1, -4, -8, 2, 1, -5, 0, 2.5, -4, 1, 0, 2, -0.5);

        double printed = sum(1, 1, 2.5, 1, 4, 1.5, 6, 1.5, 6.5, 0.5, 7, 1, 10.5, 0.5, 13, 0.5, 14, 1, 18, 0.5);
        assertEquals(printed, use.minerCycles(), 1e-6);
        // 10.5, 13 and 14 span up to one and a half times the limit, 18 up to twice
        assertEquals(4L, use.halfCycles().get(10));
        assertEquals(1L, use.halfCycles().get(11));
    }

    @Test
    void addsUpASmoothHistory() {
        List<Double> c = new ArrayList<>();
        for (int i = 0; i <= 1_000; i++) {
            c.add(0.8 * Math.sin(0.01 * Math.PI * i) + 0.2 * Math.sin(0.032 * Math.PI * i));
        }
        RopeUse use = use(c.stream().mapToDouble(Double::doubleValue).toArray());

        double printed = sum(
                0.02555985050659,
                2,
                0.09020631993391,
                2,
                0.7841230166856958,
                1,
                1.651287540559949,
                1,
                1.798637423867886,
                1,
                1.9065326561275655,
                1,
                1.9722034009805516,
                1,
                1.9942872896932382,
                0.5);
        // each of 15 cycles is rounded to a thousand millionth, each range to a millionth
        assertEquals(printed, use.minerCycles(), 2e-8);
        // the table of the reference says 15 rows: 4 whole cycles and 11 half ones
        assertEquals(9.5, use.cycles());
    }

    /** Case D: the three-point method on a list of reversals known for another method; ranges as the reference prints them. */
    @Test
    void addsUpReversalsByTheThreePointMethod() {
        RopeUse use = use(4, 7, 2, 10, 5, 9, 3, 4, 2, 12, 5, 11, 1, 4, 3, 10, 6, 12, 4, 8, 1, 9, 4, 6);

        double printed = sum(1, 2, 2, 0.5, 3, 0.5, 4, 3, 5, 1, 6, 1, 8, 1.5, 10, 0.5, 11, 1.5);
        assertEquals(printed, use.minerCycles(), 1e-6);
    }

    @Test
    void addsUpTheLastCase() {
        double[] e = new double[201];
        for (int i = 0; i < e.length; i++) {
            double t = 4.0 * i / 200;
            e[i] = 0.2 + 0.5 * Math.sin(t) + 0.2 * Math.cos(10 * t) + 0.2 * Math.sin(4 * t);
        }
        double printed = sum(
                0.04258965150708488,
                0.5,
                0.10973439445727551,
                1,
                0.11294628078612906,
                0.5,
                0.2057106991158965,
                1,
                0.21467990941625242,
                1,
                0.4388985979776988,
                1,
                0.48305748051348263,
                0.5,
                0.5286423866535466,
                0.5,
                0.7809330293159786,
                0.5,
                1.4343610172143002,
                0.5);

        assertEquals(printed, use(e).minerCycles(), 1e-8);
    }

    @Test
    void doesNotCountWhatIsGone() {
        RopeMeter meter = new RopeMeter(RIG, Calibration.of("0", "1"));

        assertEquals(true, meter.usesWithoutReadings().get(0).isAtLeast());
        assertEquals(false, meter.uses().get(0).isAtLeast());
        assertEquals("rope", meter.uses().get(0).gear());
    }
}
