package tautlog.desk.analysis;

import java.nio.file.Path;
import java.util.Optional;
import tautlog.calibration.CellCalibration;
import tautlog.config.ConfigException;
import tautlog.recording.Outing;
import tautlog.recording.OutingStart;
import tautlog.recording.RecordingException;
import tautlog.rig.LineCalibration;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;

/**
 * With which rig and calibration an outing is read.
 *
 * @param line calibration of the line's tension
 */
public record OutingReading(Rig rig, Calibration line) {
    /**
     * Those of the day, or what {@code question} puts in their place.
     *
     * @throws ConfigException if this program cannot read the rig of the day
     * @throws RecordingException if the calibration does not fit the instrument
     */
    public static OutingReading of(Path file, Outing outing, Question question)
            throws ConfigException, RecordingException {
        Rig rig = question.rig().isPresent()
                ? question.rig().get()
                : Rig.parse("rig in " + file, outing.start().rigToml());
        return new OutingReading(rig, line(file, outing, question.calibrationOf(outing), rig));
    }

    static Calibration line(Path file, Outing outing, CellCalibration cell, Rig rig) throws RecordingException {
        Calibration line = cellCarriesMore(outing) ? LineCalibration.of(cell.response(), rig) : cell.response();
        Optional<String> misfit = LineCalibration.misfit(line, outing.start().instrument(), rig);
        if (misfit.isPresent()) {
            throw new RecordingException(file + ": outing " + (outing.index() + 1) + ": " + misfit.get());
        }
        return line;
    }

    static boolean cellCarriesMore(Outing outing) {
        return outing.start().source() != OutingStart.Source.IMPORT;
    }
}
