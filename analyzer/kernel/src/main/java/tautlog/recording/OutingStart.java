package tautlog.recording;

import tautlog.calibration.CellCalibration;
import tautlog.sample.Instrument;

/**
 * What is known and in force when an outing begins; stored as evidence.
 *
 * @param rigToml the rig file's text, whole
 * @param calibration of the load cell itself, its file whole: where the cell sits is told by the rig alone and is taken into
 *     account by each reader, once ({@link tautlog.rig.LineCalibration}); of an import it is that of the line's tension itself
 * @param program name and version of the program that records, {@code tautlogd 0.1.0}
 * @param source {@code instrument}, or {@code import} when the readings were logged elsewhere
 */
public record OutingStart(
        Instrument instrument, String rigToml, CellCalibration calibration, String program, Source source) {
    /** Where the readings come from. */
    public enum Source {
        INSTRUMENT,
        IMPORT
    }
}
