package tautlog.detect;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tautlog.fixtures.Findings;
import tautlog.fixtures.Rigs;
import tautlog.rig.Driveline;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;
import tautlog.sample.PlainCounts;

/** The shaft falls silent for longer than the detectors keep samples; what the line bore in the second before is still told. */
class SilentShaftTest {
    private static final int TICKS = 2_000;
    private static final int FRAME = 25;
    private static final int LOAD = 40_000;
    private static final Instrument INSTRUMENT = new Instrument("TL-1", 1, 0, 7, 1_000_000, 500_000, 1 << 23, 1);

    private final Findings findings = new Findings();

    private Detection detection() {
        Rig plain = Rigs.withLimit("50000", "20000");
        Driveline line =
                new Driveline(0.09, 0.01, 4, 14, 0.75, 1_120, 540, OptionalDouble.of(10), OptionalDouble.of(5));
        Rig rig = new Rig(
                plain.winch(),
                new BigDecimal("50000"),
                plain.hookups(),
                plain.detect(),
                Optional.empty(),
                Optional.of(line));
        return new Detection(INSTRUMENT, rig, Calibration.of("0", "1"), findings);
    }

    @ParameterizedTest
    @CsvSource({"20, true, true", "60, true, true", "60, true, false", "60, false, true", "60, false, false"})
    void tellsTheGreatestOfTheSecondBeforeTheSilence(int silence, boolean lossInIt, boolean byRuns) {
        Detection detection = detection();
        long until = 10_000_000 + silence * 1_000_000L;
        long pulses = 0;
        long pulseTick = 0;
        int[] counts = new int[FRAME];
        for (long number = 0; number * TICKS < until + 10_000_000; number += FRAME) {
            long tick = number * TICKS;
            boolean isSilent = tick > 10_000_000 && tick < until;
            if (tick % 100_000 == 0 && tick > 0 && !isSilent) {
                pulses += (tick - pulseTick) / 100_000;
                pulseTick = tick;
                detection.shaft(tick, pulses, new long[] {tick}, 1);
            } else if (lossInIt && tick == 11_200_000) {
                detection.shaft(tick, pulses + 3, new long[0], 0);
            }
            Arrays.fill(counts, tick >= 10_200_000 && tick < 11_000_000 ? LOAD : 100);
            if (byRuns) {
                detection.frame(number, tick, 0, FRAME);
                detection.run(number, PlainCounts.copyOf(counts, 0, FRAME));
            } else {
                detection.tension(number, tick, 0, counts, 0, FRAME);
            }
        }
        detection.end();

        List<Findings.Interval> intervals = findings.intervals().stream()
                .filter(interval -> interval.ticks() > 2_000_000)
                .toList();
        assertEquals(1, intervals.size());
        assertEquals(500, intervals.get(0).samples());
        assertEquals(LOAD, intervals.get(0).greatest());
        assertTrue(intervals.get(0).atMost() >= LOAD);
    }
}
