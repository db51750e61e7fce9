package tautlog.desk.season;

import java.util.Optional;
import tautlog.calibration.CellCalibration;
import tautlog.desk.analysis.Question;
import tautlog.rig.Rig;

/** What was given at the start for "what if": another rig, another calibration; and the text of both, to tell them from others. */
public record Offer(Optional<Rig> rig, Optional<CellCalibration> calibration, String text) {
    public static final Offer NONE = new Offer(Optional.empty(), Optional.empty(), "");

    /** The question that an analysis is asked; what was not given is as on the day. */
    public Question question(WhatIf whatIf) {
        return new Question(
                whatIf.otherRig() ? rig : Optional.empty(),
                whatIf.hookup(),
                whatIf.otherCalibration() ? calibration : Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }
}
