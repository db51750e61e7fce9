package tautlog.desk.calibration;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.hipparchus.distribution.continuous.TDistribution;
import tautlog.desk.page.Block;
import tautlog.quantity.ForceUnit;
import tautlog.rig.Cell;
import tautlog.rig.Rig;

/** Finds what is wrong with a calibration, or what it does not cover; the worst first. */
final class Cautions {
    /** Chosen: a curve through fewer would follow their errors. */
    private static final int ENOUGH_LOADS = 5;
    /** Chosen: loads that begin higher leave the zero to extrapolation. */
    private static final double LOW_START = 0.2;
    /** Chosen: between loads closer than this share of the greatest, scatter alone may turn the order round. */
    private static final double CLOSE = 0.02;
    /** The counts of a converter of 24 bits. */
    private static final double CONVERTER_TOP = 8_388_607;

    private static final List<ForceUnit> MASSES = List.of(ForceUnit.KG, ForceUnit.T, ForceUnit.LB);

    private final CalibrationStudy study;
    private final List<Caution> found = new ArrayList<>();

    Cautions(CalibrationStudy study) {
        this.study = study;
    }

    List<Caution> all() {
        ownReading();
        degree();
        loads();
        reach();
        directions();
        order();
        top();
        outliers();
        units();
        unknowns();
        found.sort(java.util.Comparator.comparing(caution -> caution.tone() == Block.Tone.ACTION ? 0 : 1));
        return List.copyOf(found);
    }

    private void act(String kind, String label, String text) {
        found.add(Caution.act(kind, label, text));
    }

    private void note(String kind, String label, String text) {
        found.add(Caution.note(kind, label, text));
    }

    private void ownReading() {
        new OwnReading(study.readings(), study.steps())
                .suspicion(study.line())
                .ifPresent(why -> act(
                        "own-reading",
                        "Loads not weighed?",
                        why + ". Loads read off the instrument itself prove nothing: they repeat the calibration that"
                                + " the display was made with. Take loads from weights or from another, calibrated"
                                + " instrument."));
    }

    private void degree() {
        DegreeChoice choice = study.choice();
        if (!choice.settled()) {
            note("degree-not-settled", "Line or curve?", choice.because());
        } else if (study.degree() < choice.recommended()) {
            act(
                    "line-not-good-enough",
                    "Line not good enough",
                    "Degree 1 was asked for. " + choice.because() + " Leave --degree out.");
        } else if (study.degree() > choice.recommended()) {
            note(
                    "curve-not-needed",
                    "Curve not needed",
                    "Degree 2 was asked for. " + choice.because() + " A needless curve goes astray beyond its loads.");
        }
        if (study.degree() >= choice.recommended() && study.chosen().runs().probability() <= 0.01) {
            act(
                    "pattern",
                    "Wrong shape",
                    "The residuals of degree " + study.degree() + " still lie in long runs on one side ("
                            + study.chosen().runs().runs() + " runs at "
                            + study.steps().size()
                            + " loads, which chance does less than once in a hundred): the cell does not follow this shape."
                            + " Look for a bent mount, a load that touched something, drift while reading.");
        }
    }

    private void loads() {
        int loads = study.steps().size();
        if (loads < ENOUGH_LOADS) {
            act(
                    "too-few-loads",
                    "Too few loads",
                    "Only " + loads + " different loads: take " + ENOUGH_LOADS
                            + " or more, spread evenly from nothing to more than the line will ever carry.");
        }
        if (study.behaviour().spreadCounts().isEmpty()) {
            note(
                    "not-repeated",
                    "Not repeated",
                    "No load was come to twice the same way: repeatability is unknown. Go through the loads at least twice.");
        }
        if (study.leastNewtons() > LOW_START * study.greatestNewtons()) {
            act(
                    "zero-extrapolated",
                    "Zero not read",
                    "The least load is " + load(study.leastNewtons())
                            + ": where the unloaded cell stands is only extrapolated. Read it unloaded, before and after.");
        }
    }

    private void reach() {
        double greatest = study.greatestNewtons();
        String reached = "The greatest load was " + load(greatest) + ": beyond it nothing is known of this cell.";
        Optional<Rig> rig = study.request().rig();
        if (rig.isEmpty()) {
            note(
                    "reach",
                    "Reach",
                    reached
                            + " A shock that goes beyond it is shown with an open end. Compare it with the winch's full pull"
                            + " (give --rig).");
            return;
        }
        BigDecimal share = rig.get().cell().map(Cell::readingPerTension).orElse(BigDecimal.ONE);
        double needed = rig.get().ratedPullNewtons().multiply(share).doubleValue();
        if (greatest < needed) {
            act(
                    "does-not-reach",
                    "Loads too small",
                    reached + " At the full pull of " + rig.get().winch() + " the cell carries " + load(needed)
                            + ". Calibrate up to that and more.");
        } else {
            note(
                    "reach",
                    "Reach",
                    reached + " The full pull of " + rig.get().winch() + " puts " + load(needed) + " on it.");
        }
    }

    private void directions() {
        boolean up = study.readings().readings().stream().anyMatch(reading -> reading.direction() == Direction.UP);
        boolean down = study.readings().readings().stream().anyMatch(reading -> reading.direction() == Direction.DOWN);
        if (!down || !up) {
            act(
                    "one-way-only",
                    down ? "No run up" : "No run down",
                    "No load is written as come to from " + (down ? "below (up)" : "above (down)")
                            + ": hysteresis is unknown and in no figure. Unload by the same steps and write \"down\""
                            + " in the column direction.");
        } else if (study.behaviour().hysteresis().isEmpty()) {
            note(
                    "no-common-load",
                    "Hysteresis unknown",
                    "No load was come to both ways. Use the same loads up and down.");
        }
    }

    private void order() {
        List<LoadStep> steps = study.steps();
        List<String> falls = new ArrayList<>();
        for (int i = 1; i < steps.size(); i++) {
            double apart = steps.get(i).newtons() - steps.get(i - 1).newtons();
            boolean judged = apart >= CLOSE * study.greatestNewtons();
            if (judged && steps.get(i).meanCounts() <= steps.get(i - 1).meanCounts()) {
                falls.add(steps.get(i).readings().stream()
                        .map(reading -> "line " + reading.line())
                        .collect(Collectors.joining(", ", load(steps.get(i).newtons()) + " (", ")")));
            }
        }
        if (!falls.isEmpty()) {
            act(
                    "not-rising",
                    "Counts fall",
                    "The mean count falls or stays where the load rises, at " + String.join("; ", falls)
                            + ". Look for swapped or misread lines.");
        }
    }

    /** A curve that bends down turns somewhere; from there on a count means nothing. */
    private void top() {
        ResponseFit fit = study.chosen().fit();
        if (fit.bend() < 0) {
            double at = -fit.coefficients().get(1) / (2 * fit.bend());
            double counts = fit.response(at);
            if (counts < CONVERTER_TOP) {
                note(
                        "curve-turns",
                        "The curve turns",
                        "It has its top at " + load(at) + ", " + Digits.five(counts)
                                + " counts, within the range of a converter of 24 bits: no greater load can ever be shown.");
            }
        }
    }

    private void outliers() {
        ResponseFit fit = study.chosen().fit();
        int freedom = fit.degreesOfFreedom() - 1;
        if (freedom < 3 || fit.residualSd() <= study.quality().roundingSdCounts()) {
            return;
        }
        List<LoadReading> all = study.readings().readings();
        double bound = new TDistribution(freedom).inverseCumulativeProbability(1 - 0.025 / all.size());
        for (int i = 0; i < all.size(); i++) {
            double far = Math.abs(studentized(i));
            if (far > bound) {
                act(
                        "outlier",
                        "Misread?",
                        "Line " + all.get(i).line() + " (" + all.get(i).written() + ") lies "
                                + Digits.three(Math.abs(study.residualNewtons(i))) + " N from the fit, "
                                + Digits.three(far)
                                + " times what the others lead to expect. Read that load again; leave a reading out only for a"
                                + " reason that you can write down.");
            }
        }
    }

    /** The residual over its standard deviation as the other readings give it. */
    private double studentized(int i) {
        ResponseFit fit = study.chosen().fit();
        double variance = fit.residualSd() * fit.residualSd();
        double newtons = study.readings().readings().get(i).newtons().doubleValue();
        double leverage = Math.pow(study.quality().responseSdCounts(newtons), 2) / variance;
        double residual = study.chosen().residuals().get(i);
        double room = Math.max(1e-12, 1 - leverage);
        double others = (variance * fit.degreesOfFreedom() - residual * residual / room) / (fit.degreesOfFreedom() - 1);
        return residual / Math.sqrt(Math.max(variance * 1e-12, others) * room);
    }

    private void units() {
        List<ForceUnit> units = study.readings().units();
        String symbols = units.stream().map(ForceUnit::symbol).collect(Collectors.joining(", "));
        if (units.size() > 1) {
            act(
                    "mixed-units",
                    "Mixed units",
                    "The loads are written in " + symbols + ". Each was taken at its word: make sure.");
        }
        if (units.stream().anyMatch(MASSES::contains)) {
            note(
                    "masses",
                    "Weights",
                    "Loads in " + symbols
                            + " are taken as weights at standard gravity, 9.80665 m/s². Gravity on the ground differs"
                            + " from it by up to 0.3 % between equator and pole.");
        }
    }

    private void unknowns() {
        if (!study.countStep().isSeen()) {
            note(
                    "step-unseen",
                    "Resolution unseen",
                    "No two readings at one load differ: a display that steps by more than "
                            + study.resolutionWords()
                            + " would not show. Read a load that is no round number, or each load again.");
        }
        if (study.request().referencePercent().isEmpty()) {
            note(
                    "reference-unknown",
                    "Reference unknown",
                    "How far the reference loads may be off was not said: it is in no figure here. Give --reference-percent from the"
                            + " certificate of the weights or of the reference instrument.");
        }
        if (study.calibratedAt().isEmpty()) {
            note(
                    "time-unknown",
                    "Day unknown",
                    "When the readings were taken is not written: give --at, or a column time.");
        }
        study.shuntStepCounts()
                .filter(step -> step.signum() <= 0)
                .ifPresent(step -> act(
                        "shunt-step",
                        "Shunt",
                        "The counts did not rise when the shunt was switched on (" + step.toPlainString()
                                + "): look at its wiring."));
        if (!study.readings().unused().isEmpty()) {
            note(
                    "unused-columns",
                    "Not used",
                    "Columns that are not known here: "
                            + String.join(", ", study.readings().unused()) + ".");
        }
    }

    private String load(double newtons) {
        return CalibrationPage.unit(study).format(newtons);
    }
}
