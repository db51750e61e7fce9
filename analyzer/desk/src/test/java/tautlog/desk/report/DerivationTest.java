package tautlog.desk.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DerivationTest {
    /**
     * Half-sine pulse of duration tau sampled at fs: what the nearest sample may miss of the crest is 1 − cos(π/(2 fs τ)).
     * Values: elementary derivation, tabulated for fs τ = 5 … 50. A rise of r samples stands for fs τ = 2 r.
     */
    @ParameterizedTest
    @CsvSource({"4, 1.921", "5, 1.231", "8, 0.4815", "10, 0.3083", "25, 0.0493"})
    void estimatesWhatAHalfSineHidesBetweenTwoSamples(int rise, double missedPercent) {
        double crest = Derivation.ifHalfSine(10_000, rise);

        assertEquals(missedPercent, (1 - 10_000 / crest) * 100, 0.0006);
    }

    @Test
    void aRiseOfOneSampleMayHideAFactorOfRootTwo() {
        assertEquals(Math.sqrt(2), Derivation.ifHalfSine(1, 1), 1e-12);
    }
}
