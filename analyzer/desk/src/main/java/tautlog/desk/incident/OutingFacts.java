package tautlog.desk.incident;

import java.util.List;
import java.util.Optional;
import tautlog.desk.drawing.SpanDrawings;
import tautlog.desk.report.Moment;

/**
 * What is known of the outing that was under way, or that ended or began close by.
 *
 * @param number from 1, as counted in the file
 * @param at the moment asked for
 * @param end its last reading
 * @param isEnded it was ended in order; else the power ended it, or it still goes on
 * @param rateHertz readings a second
 * @param program that recorded it
 * @param turns which hookup was on, those in force in the window
 * @param subject empty when nothing was pulled in the window
 * @param hasDriveline whether the rig describes drum and shaft
 * @param driveline empty without that, and when nothing was pulled
 * @param gear of the subject
 * @param isLedgerRead whether inspections were looked up in a ledger
 * @param ledgerUnusable lines of it that could not be used
 * @param alike elsewhere in the recordings given
 * @param traces the outing round the moment, the shortest span first
 */
public record OutingFacts(
        String file,
        int number,
        String winch,
        Moment at,
        Moment start,
        Moment end,
        boolean isEnded,
        boolean isThinned,
        double rateHertz,
        String program,
        Readings readings,
        List<Incident.Turn> turns,
        Optional<Subject> subject,
        boolean hasDriveline,
        Optional<DrivelineLoad> driveline,
        List<GearFacts> gear,
        boolean isLedgerRead,
        long ledgerUnusable,
        CalibrationFacts calibration,
        ClockTrust clock,
        Incident.Integrity integrity,
        List<SeasonEvent> alike,
        List<SpanDrawings.Drawn> traces) {
    public OutingFacts {
        turns = List.copyOf(turns);
        gear = List.copyOf(gear);
        alike = List.copyOf(alike);
        traces = List.copyOf(traces);
    }
}
