package tautlog.desk.incident;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.HexFormat;
import java.util.Optional;
import tautlog.calibration.CellCalibration;
import tautlog.calibration.FitQuality;
import tautlog.recording.Outing;

/**
 * The load cell's calibration that the figures rest on.
 *
 * @param isOther whether it is another than the one kept in the recording
 * @param fileSha256 of its file's text, 64 hexadecimal characters: the file that was kept has the same if it is the same
 * @param calibratedAt empty when the file does not say it
 * @param quality empty when only its numbers were written
 */
public record CalibrationFacts(
        boolean isOther, String fileSha256, Optional<Instant> calibratedAt, Optional<FitQuality> quality) {
    /** @param other with which the outing was read instead of its own */
    static CalibrationFacts of(Outing outing, Optional<CellCalibration> other) {
        CellCalibration used = other.orElse(outing.start().calibration());
        return new CalibrationFacts(other.isPresent(), sha256(used.toml()), used.calibratedAt(), used.quality());
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
