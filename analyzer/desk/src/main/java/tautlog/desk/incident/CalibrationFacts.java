package tautlog.desk.incident;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.HexFormat;
import java.util.Optional;
import tautlog.calibration.CellCalibration;
import tautlog.calibration.FitQuality;

/**
 * The load cell's calibration that the figures rest on.
 *
 * @param fileSha256 of its file's text, 64 hexadecimal characters: the file that was kept has the same if it is the same
 * @param calibratedAt empty when the file does not say it
 * @param quality empty when only its numbers were written
 */
public record CalibrationFacts(String fileSha256, Optional<Instant> calibratedAt, Optional<FitQuality> quality) {
    static CalibrationFacts of(CellCalibration calibration) {
        return new CalibrationFacts(sha256(calibration.toml()), calibration.calibratedAt(), calibration.quality());
    }

    private static String sha256(String text) {
        try {
            byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
