package tautlog.desk.analysis;

import java.util.List;
import tautlog.desk.report.Report;
import tautlog.desk.uncertainty.Doubt;
import tautlog.detect.Finding;
import tautlog.recording.Damage;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;

/**
 * What one pass of the detectors over one outing found.
 *
 * @param ordinal the outing's place in the history, from 1
 * @param calibration of the line's tension: the cell's own, divided by what the cell's place makes of it
 * @param differences from the day itself, one sentence each
 * @param findings in the order of their starts, those of the time asked for
 * @param lostNamings where of {@code hookups} nothing is known, those of the time asked for
 * @param marks that people left
 * @param damages blocks that could not be read; their samples are gaps
 * @param live whether the logger said the same on the day
 * @param doubt how far its tensions may be off
 */
public record Study(
        int ordinal,
        History.Member member,
        Rig rig,
        Calibration calibration,
        OutingTimes times,
        List<String> differences,
        List<Finding> findings,
        HookupTrack hookups,
        List<LostNaming> lostNamings,
        TrustCount trust,
        List<MarkTrack.MarkAt> marks,
        Report.Hours hours,
        List<Damage> damages,
        LiveSpeech.Agreement live,
        Doubt doubt) {
    public Study {
        differences = List.copyOf(differences);
        findings = List.copyOf(findings);
        lostNamings = List.copyOf(lostNamings);
        marks = List.copyOf(marks);
        damages = List.copyOf(damages);
    }
}
