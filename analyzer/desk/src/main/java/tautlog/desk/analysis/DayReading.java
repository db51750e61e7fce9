package tautlog.desk.analysis;

import java.util.Optional;
import tautlog.config.ConfigException;
import tautlog.recording.OutingStart;
import tautlog.recording.RecordingException;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Evidence;
import tautlog.sample.Instrument;

/**
 * How an outing was read on its own day.
 *
 * @param calibration of the line's tension
 */
public record DayReading(Instrument instrument, Rig rig, Calibration calibration, OutingTimes times) {
    /**
     * Rig and calibration as stored.
     *
     * @param ordinal the outing's place in the history, from 1
     * @throws ConfigException if this program cannot read the rig
     * @throws RecordingException if the calibration does not fit the instrument
     */
    public static DayReading of(History.Member member, int ordinal) throws ConfigException, RecordingException {
        return of(
                member,
                ordinal,
                Rig.parse("rig in " + member.file(), member.outing().start().rigToml()));
    }

    /** With this rig in place of the stored one; the calibration as stored. */
    public static DayReading of(History.Member member, int ordinal, Rig rig) throws RecordingException {
        OutingStart start = member.outing().start();
        return new DayReading(
                start.instrument(),
                rig,
                member.lineCalibration(start.calibration(), rig),
                new OutingTimes(member.recording(), member.outing(), ordinal));
    }

    /** What detectors are fed: hookups that the rig has, counts less a moved zero. */
    public Evidence lessZero(History.Member member, Evidence next) {
        return hookups(member.lessZero(calibration, next));
    }

    /** Passes everything on, hookups that the rig does not have replaced by one it has. */
    public Evidence hookups(Evidence next) {
        return new HookupChoice(rig, Optional.empty(), next);
    }

    /** Passes everything on to {@code next}, hookups that the rig does not have replaced by one it has. */
    public Evidence choosing(Evidence next) {
        return hookups(times.notingPlaces(next));
    }
}
