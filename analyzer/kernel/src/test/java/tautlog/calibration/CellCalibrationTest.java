package tautlog.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import tautlog.config.ConfigException;
import tautlog.config.Problem;
import tautlog.sample.Calibration;

class CellCalibrationTest {
    private static final String FITTED = """
            schema = 1
            b0_counts = 4000.5
            b1_counts_per_newton = 2.0
            b2_counts_per_newton2 = 1e-7
            calibrated_at = 2026-04-30T12:00:00Z
            shunt_step_counts = 61234.5
            [fit]
            residual_sd_counts = 3.0
            degrees_of_freedom = 18
            least_load_n = 0.0
            greatest_load_n = 40000.0
            reference_percent = 0.1
            [fit.covariance]
            b0_b0 = 4.0
            b0_b1 = 0.0
            b1_b1 = 1e-8
            b0_b2 = 0.0
            b1_b2 = 0.0
            b2_b2 = 0.0
            """;

    @Test
    void readsTheTwoNumbersOfAStraightLine() throws ConfigException {
        // when
        CellCalibration read = CellCalibration.parse(
                "calibration.toml", "zero_counts = 4000.5\nnewtons_per_count = \"0.4448221615260500001\"");
        // then
        assertEquals(Calibration.of("4000.5", "0.4448221615260500001"), read.response());
        assertTrue(read.quality().isEmpty());
    }

    @Test
    void readsWhatACalibrationWrote() throws ConfigException {
        // when
        CellCalibration read = CellCalibration.parse("calibration.toml", FITTED);
        // then
        assertEquals(
                new Calibration(new BigDecimal("4000.5"), new BigDecimal("0.5"), new BigDecimal("5E-8")),
                read.response());
        assertEquals(Instant.parse("2026-04-30T12:00:00Z"), read.calibratedAt().orElseThrow());
        assertEquals(new BigDecimal("61234.5"), read.shuntStepCounts().orElseThrow());
        FitQuality quality = read.quality().orElseThrow();
        assertEquals(40_000, quality.greatestNewtons());
        assertEquals(0.1, quality.referencePercent().orElseThrow());
        // √(4 + 1e-8 · 20000²) = √8
        assertEquals(Math.sqrt(8), quality.responseSdCounts(20_000), 1e-12);
    }

    @Test
    void takesRoundingForScatterWhereTheResidualsShowLess() throws ConfigException {
        // given: a step of 24 counts is 6.93 counts of standard deviation, the residuals are 3
        String rounded = FITTED.replace("degrees_of_freedom", "resolution_counts = 24.0\ndegrees_of_freedom");

        FitQuality quality =
                CellCalibration.parse("calibration.toml", rounded).quality().orElseThrow();
        FitQuality unsaid =
                CellCalibration.parse("calibration.toml", FITTED).quality().orElseThrow();

        double rounding = 24 / Math.sqrt(12);
        assertEquals(rounding, quality.scatterSdCounts(), 1e-12);
        assertEquals(Math.sqrt(8) * rounding / 3, quality.responseSdCounts(20_000), 1e-9);
        assertEquals(24, quality.readingStepCounts());
        assertEquals(3, unsaid.scatterSdCounts());
        assertEquals(1, unsaid.readingStepCounts());
    }

    @Test
    void readsFromWhichSideTheLoadsWereComeToAndTakesSilenceForUnknown() throws ConfigException {
        String said = FITTED.replace("degrees_of_freedom", "directions = \"up\"\ndegrees_of_freedom");

        assertEquals(Directions.UP, directions(said));
        assertEquals(Directions.BOTH, directions(said.replace("\"up\"", "\"both\"")));
        assertEquals(Directions.UNKNOWN, directions(FITTED));
        ConfigException wrong =
                assertThrows(ConfigException.class, () -> directions(said.replace("\"up\"", "\"unknown\"")));
        assertEquals("fit.directions", wrong.problems().get(0).key());
    }

    private static Directions directions(String toml) throws ConfigException {
        return CellCalibration.parse("calibration.toml", toml)
                .quality()
                .orElseThrow()
                .directions();
    }

    @Test
    void tellsEveryProblemAtOnce() {
        ConfigException wrong = assertThrows(
                ConfigException.class,
                () -> CellCalibration.parse(
                        "calibration.toml", "b0_counts = 1.0\nb1_counts_per_newton = -2.0\nnewtons = 3\n"));
        assertEquals(
                List.of("b1_counts_per_newton", "newtons"),
                wrong.problems().stream().map(Problem::key).toList());
    }

    @Test
    void writesTheNumbersSoThatTheyAreReadBackToTheLastDigit() throws ConfigException {
        // given
        Calibration line = Calibration.of("-12.3456789012345678901", "0.0000444822161526050000000001");
        // when
        CellCalibration written = CellCalibration.written(line);
        // then
        assertEquals(line, CellCalibration.parse("calibration", written.toml()).response());
    }
}
