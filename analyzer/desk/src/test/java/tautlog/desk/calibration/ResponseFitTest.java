package tautlog.desk.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;

/**
 * Source: NIST/ITL Statistical Reference Datasets, linear regression, {@code itl.nist.gov/div898/strd/lls/data/Pontius.shtml} and
 * {@code Norris.shtml}: data and certified values (US government work). Tolerance 1e-9 relative: double precision with loads
 * up to three millions squared leaves about eleven digits.
 */
class ResponseFitTest {
    private static final double RELATIVE = 1e-9;

    @Test
    void fitsTheLoadCellOfPontiusToTheCertifiedDigits() throws IOException {
        // given: 20 load steps, twice; deflection over load
        Data pontius = Data.read("nist_pontius.csv");

        // when
        ResponseFit fit = ResponseFit.of(pontius.x, pontius.y, 2);

        // then
        certified(0.673565789473684E-03, fit.coefficients().get(0));
        certified(0.732059160401003E-06, fit.coefficients().get(1));
        certified(-0.316081871345029E-14, fit.coefficients().get(2));
        certified(0.205177424076185E-03, fit.residualSd());
        certified(0.999999900178537, fit.rSquared());
        assertEquals(37, fit.degreesOfFreedom());
        certified(0.107938612033077E-03, fit.sd(0));
        certified(0.157817399981659E-09, fit.sd(1));
        certified(0.486652849992036E-16, fit.sd(2));
    }

    @Test
    void straightLineThroughPontiusLooksExcellentAndIsTenTimesWorse() throws IOException {
        Data pontius = Data.read("nist_pontius.csv");

        ResponseFit line = ResponseFit.of(pontius.x, pontius.y, 1);

        // not certified by NIST: worked out in exact rational arithmetic from the same data
        certified(0.00614968421052632, line.coefficients().get(0));
        certified(7.22102581453634e-07, line.coefficients().get(1));
        certified(0.00217127259605675, line.residualSd());
        assertTrue(line.rSquared() > 0.9999);
        assertTrue(
                line.residualSd() > 10 * ResponseFit.of(pontius.x, pontius.y, 2).residualSd());
    }

    @Test
    void fitsNorrisToTheCertifiedDigits() throws IOException {
        Data norris = Data.read("nist_norris.csv");

        ResponseFit fit = ResponseFit.of(norris.x, norris.y, 1);

        certified(-0.262323073774029, fit.coefficients().get(0));
        certified(1.00211681802045, fit.coefficients().get(1));
        certified(0.884796396144373, fit.residualSd());
        certified(0.999993745883712, fit.rSquared());
        certified(0.232818234301152, fit.sd(0));
        certified(0.429796848199937E-03, fit.sd(1));
    }

    @Test
    void givesACovarianceThatIsTheSameAlongBothSidesOfItsDiagonal() throws IOException {
        Data norris = Data.read("nist_norris.csv");

        List<Double> line = ResponseFit.of(norris.x, norris.y, 1).covariance();
        List<Double> curve = ResponseFit.of(norris.x, norris.y, 2).covariance();

        assertEquals(line.get(1), line.get(2));
        assertEquals(curve.get(1), curve.get(3));
        assertEquals(curve.get(2), curve.get(6));
        assertEquals(curve.get(5), curve.get(7));
        // textbook: the covariance of a line is - mean load times the variance of its slope
        double mean = java.util.Arrays.stream(norris.x).average().orElseThrow();
        assertEquals(-mean * line.get(3), line.get(1), 1e-12);
    }

    @Test
    void refusesWhatLeavesNoResidual() {
        assertThrows(IllegalArgumentException.class, () -> ResponseFit.of(new double[2], new double[2], 1));
        assertThrows(IllegalArgumentException.class, () -> ResponseFit.of(new double[9], new double[8], 1));
        assertThrows(IllegalArgumentException.class, () -> ResponseFit.of(new double[9], new double[9], 3));
        assertThrows(IllegalArgumentException.class, () -> ResponseFit.of(new double[9], new double[9], 1));
        double[] two = {1, 2, 1, 2, 1};
        assertThrows(IllegalArgumentException.class, () -> ResponseFit.of(two, new double[5], 2));
    }

    private static void certified(double value, double found) {
        assertEquals(value, found, Math.abs(value) * RELATIVE);
    }

    private static final class Data {
        final double[] x;
        final double[] y;

        private Data(List<CSVRecord> rows) {
            x = rows.stream()
                    .mapToDouble(row -> Double.parseDouble(row.get("x")))
                    .toArray();
            y = rows.stream()
                    .mapToDouble(row -> Double.parseDouble(row.get("y")))
                    .toArray();
        }

        static Data read(String name) throws IOException {
            CSVFormat format = CSVFormat.DEFAULT
                    .builder()
                    .setHeader()
                    .setSkipHeaderRecord(true)
                    .get();
            try (Reader reader = new InputStreamReader(
                    Objects.requireNonNull(ResponseFitTest.class.getResourceAsStream(name)), StandardCharsets.UTF_8)) {
                return new Data(format.parse(reader).getRecords());
            }
        }
    }
}
