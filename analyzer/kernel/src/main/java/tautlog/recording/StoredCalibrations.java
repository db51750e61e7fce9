package tautlog.recording;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import tautlog.calibration.CellCalibration;
import tautlog.config.ConfigException;

/** The calibrations stored with outings, each text read once: a season has thousands of outings and a few of them. Safe for threads. */
final class StoredCalibrations {
    private static final int MOST = 64;
    private static final Map<String, CellCalibration> BY_TEXT = new ConcurrentHashMap<>();

    private StoredCalibrations() {}

    /** @throws IllegalArgumentException if {@code toml} cannot be read */
    static CellCalibration of(String toml) {
        CellCalibration known = BY_TEXT.get(toml);
        if (known == null) {
            known = read(toml);
            if (BY_TEXT.size() < MOST) {
                BY_TEXT.put(toml, known);
            }
        }
        return known;
    }

    private static CellCalibration read(String toml) {
        try {
            return CellCalibration.parse("calibration in the recording", toml);
        } catch (ConfigException unreadable) {
            throw new IllegalArgumentException(unreadable.getMessage(), unreadable);
        }
    }
}
