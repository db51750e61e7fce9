package tautlog.desk.uncertainty;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import tautlog.calibration.CellCalibration;
import tautlog.calibration.FitQuality;
import tautlog.desk.uncertainty.AngleDoubt.End;
import tautlog.rig.Cell;
import tautlog.rig.CellPlace;
import tautlog.rig.LineCalibration;
import tautlog.rig.Rig;
import tautlog.sample.Calibration;
import tautlog.sample.Instrument;

/**
 * How far the tensions of one outing may be off. One instance an outing; figures are asked of it one by one.
 *
 * <p>Parts, in newtons of the line's tension: coefficients and scatter of the calibration (Student's t of its degrees of freedom),
 * reference loads, zero (a bound, from how far the slack line was seen to be off; the drift setting at least while that is
 * unproven), half a step of the counts, noise (which lifts the greatest of many readings), the angle at the cell. An end is unknown beyond the calibration's greatest load, at the
 * converter's end stop, where a line rose too fast ({@code Steepness}), and always when nothing is known of the calibration's quality.
 */
public final class Doubt {
    static final String AT_ITS_END = "above it: the reading was at its own end or past the cell's capacity";
    static final String TOO_FAST = "above it: the line rose too fast for the instrument";
    static final String BEYOND_CALIBRATION = "above it: beyond the greatest load of the calibration nothing is proven";
    static final String QUALITY_UNKNOWN = "how good the calibration is, is not known";
    private static final String ZERO_UNPROVEN =
            "zero unproven: after its first pull the outing shows no slack line at rest";
    private static final String ANGLE_UNBOUNDED =
            "the angle at the cell: angle_plus_minus_deg is not written in the rig";
    private static final String REFERENCE_UNSTATED =
            "the reference loads of the calibration: nobody stated how good they are";

    /** What is known of the zero in the outing. */
    public enum Zero {
        /** A slack line proved it, or a person gave their word for it ({@code analyzer/FINDINGS.md}, Zero). */
        PROVEN,
        UNPROVEN,
        /** The outing's readings were thinned: nothing is left that tells of its zero and noise. */
        THINNED
    }

    private final int atLeastFrom;
    private final Optional<FitQuality> quality;
    private final Calibration line;
    private final double readingPerTension;
    private final boolean angleUnbounded;
    private final Optional<String> sheaveFriction;
    private final AngleDoubt angle;
    private final double driftNewtons;
    private final SlackStudy slack;
    private final Zero zero;
    private final FastPeaks fastPeaks;
    private final NearPeaks nearPeaks;

    /**
     * @param cell the load cell's calibration
     * @param line the line's, as the figures were worked out with
     * @param cellCarriesMore whether the cell's place makes its reading another than the tension; not for imported forces
     */
    public Doubt(
            Instrument instrument,
            CellCalibration cell,
            Calibration line,
            Rig rig,
            boolean cellCarriesMore,
            SlackStudy slack,
            Zero zero,
            FastPeaks fastPeaks,
            NearPeaks nearPeaks) {
        atLeastFrom = LineCalibration.atLeastFrom(line, instrument, rig);
        quality = cell.quality();
        this.line = line;
        readingPerTension = cellCarriesMore
                ? rig.cell().map(at -> at.readingPerTension().doubleValue()).orElse(1.0)
                : 1;
        Optional<Cell> angled = cellCarriesMore ? rig.cell() : Optional.empty();
        angleUnbounded = angled.map(Cell::isAngleUnbounded).orElse(false);
        sheaveFriction = angled.map(Cell::at).flatMap(Doubt::sheaveFriction);
        angle = angled.map(AngleDoubt::of).orElse(AngleDoubt.NONE);
        driftNewtons = rig.detect().driftNewtons().doubleValue();
        this.slack = slack;
        this.zero = zero;
        this.fastPeaks = fastPeaks;
        this.nearPeaks = nearPeaks;
    }

    /**
     * Of the greatest tension between two samples. A rise among them that was too fast for the instrument leaves it without an upper end,
     * whichever reading was the greatest: it may have been the greater between two.
     *
     * @param peak its count, less the shift of the zero
     * @param atLeast it is a lower bound
     */
    public Interval ofPeak(int peak, long firstNumber, long lastNumber, boolean atLeast) {
        double newtons = line.newtons(peak);
        Figure figure = Figure.greatestOf(nearPeaks.asHigh(peak, firstNumber, lastNumber));
        Interval interval = around(newtons, fastPeaks.crest(newtons, firstNumber, lastNumber), figure);
        if (atLeast || isLowerBound(peak)) {
            return openAbove(interval, AT_ITS_END);
        }
        return fastPeaks.isTooFast(firstNumber, lastNumber) ? openAbove(interval, TOO_FAST) : interval;
    }

    /** False when the instrument is too slow for the rise between two sample numbers. */
    public boolean isResolved(long footNumber, long peakNumber) {
        return fastPeaks.steepness(footNumber, peakNumber).isResolved();
    }

    private boolean isLowerBound(int count) {
        return count >= atLeastFrom;
    }

    /** Of one sample, {@code count} less the shift of the zero, that no fast rise led to. */
    public Interval ofReading(int count) {
        double newtons = line.newtons(count);
        Interval interval = around(newtons, newtons, Figure.ONE_READING);
        return isLowerBound(count) ? openAbove(interval, AT_ITS_END) : interval;
    }

    /** Of a mean over many samples: noise and resolution average out. */
    public Interval ofMean(double newtons, boolean atLeast) {
        return ofMean(newtons, Figure.MEAN_OF_MANY, atLeast);
    }

    /** Of a mean over {@code samples}. */
    public Interval ofMean(double newtons, long samples, boolean atLeast) {
        return ofMean(newtons, Figure.meanOf((double) samples), atLeast);
    }

    private Interval ofMean(double newtons, Figure figure, boolean atLeast) {
        Interval interval = around(newtons, newtons, figure);
        return atLeast ? openAbove(interval, "above it: a reading was at its own end") : interval;
    }

    /** Of figures that are made of two tensions. */
    public RelatedTensions related() {
        return new RelatedTensions(
                quality.map(fit -> new TwoTensions(
                        fit,
                        line,
                        readingPerTension,
                        angle,
                        zeroDoubt(),
                        slack.noiseCounts().orElse(0))),
                new RelatedTensions.Words(
                        leavesOut(List.of()),
                        leavesOut(List.of(ZERO_UNPROVEN)),
                        leavesOut(List.of(ANGLE_UNBOUNDED, REFERENCE_UNSTATED))),
                atLeastFrom,
                fastPeaks);
    }

    private List<String> leavesOut(List<String> cancelled) {
        return quality.map(fit -> leavesOut(fit, Figure.ONE_READING)).orElse(List.of()).stream()
                .filter(words -> !cancelled.contains(words))
                .toList();
    }

    static Interval openAbove(Interval interval, String why) {
        List<String> leavesOut = new ArrayList<>(interval.leavesOut());
        leavesOut.add(why);
        return new Interval(interval.lowNewtons(), OptionalDouble.empty(), interval.largest(), leavesOut);
    }

    /** @param crest where a fast peak may have reached */
    private Interval around(double newtons, double crest, Figure figure) {
        if (zero == Zero.THINNED) {
            return Interval.unknown(
                    "the outing's readings were thinned: nothing is left that tells of its zero and noise");
        }
        if (quality.isEmpty()) {
            return Interval.unknown(QUALITY_UNKNOWN);
        }
        FitQuality fit = quality.get();
        double reading = newtons * readingPerTension;
        if (Math.abs(reading) > fit.greatestNewtons()) {
            return beyond(fit, figure);
        }
        Budget low = budget(fit, newtons, figure, angle.parts(newtons, End.LOW));
        Budget high = budget(fit, newtons, figure, angle.parts(crest, End.HIGH));
        double below = low.halfWidth();
        double above = high.halfWidth();
        boolean hidesMost = crest - newtons > above;
        Optional<Cause> largest = (below > above ? low : high).largest();
        if (figure.asHigh() > 1) {
            below = low.below(new NoiseAtTop(figure.asHigh()), below);
        }
        return new Interval(
                OptionalDouble.of(newtons - below),
                OptionalDouble.of(crest + above),
                hidesMost ? Optional.of(Cause.FAST_PEAK) : largest,
                leavesOut(fit, figure));
    }

    /** A tension beyond the calibration's greatest load is that load at least. */
    private Interval beyond(FitQuality fit, Figure figure) {
        double greatest = fit.greatestNewtons() / readingPerTension * (1 - 1e-9);
        return openAbove(around(greatest, greatest, figure), BEYOND_CALIBRATION);
    }

    private Budget budget(FitQuality fit, double newtons, Figure figure, List<Part> angled) {
        double reading = newtons * readingPerTension;
        double newtonsPerCount = newtonsPerCount(newtons);
        double fitted = Math.hypot(fit.responseSdCounts(reading), fit.scatterSdCounts()) * newtonsPerCount;
        List<Part> parts = new ArrayList<>();
        parts.add(Part.normal(Cause.CALIBRATION, fitted));
        parts.add(Part.normal(
                Cause.REFERENCE_LOADS,
                Math.abs(newtons) * fit.referencePercent().orElse(0) / 200));
        ZeroDoubt zeroDoubt = zeroDoubt();
        parts.add(Part.bound(Cause.ZERO, zeroDoubt.boundNewtons()));
        parts.add(Part.rectangle(Cause.ZERO, zeroDoubt.wanderNewtons()));
        parts.addAll(angled);
        if (!figure.isMean()) {
            parts.add(Part.rectangle(Cause.RESOLUTION, newtonsPerCount * fit.readingStepCounts() / 2));
        }
        double noise = slack.noiseCounts().orElse(0) * newtonsPerCount;
        parts.add(Part.normal(Cause.NOISE, noise / Math.sqrt(figure.averaged())));
        return new Budget(parts, fit.degreesOfFreedom(), fitted);
    }

    private ZeroDoubt zeroDoubt() {
        ZeroDoubt seen = slack.zero().orElseGet(() -> ZeroDoubt.within(driftNewtons));
        return zero == Zero.PROVEN ? seen : seen.atLeast(driftNewtons);
    }

    /** Source: {@code firmware-notes/cell.md}, Friction. */
    private static Optional<String> sheaveFriction(CellPlace place) {
        return switch (place) {
            case LINE -> Optional.empty();
            case DEAD_END ->
                Optional.of(
                        "the friction of the sheave between the cell at the dead end and the drum: the drum's side may pull more");
            case FAIRLEAD, BLOCK ->
                Optional.of(
                        "the friction of the sheave that the cell holds: while the winch pulls, the drum's side pulls"
                                + " about 2 to 4.5 % more");
        };
    }

    /** Newtons of the line for one count, at this tension. */
    private double newtonsPerCount(double newtons) {
        return line.newtonsPerCount().doubleValue() / (1 + 2 * line.curvature().doubleValue() * newtons);
    }

    private List<String> leavesOut(FitQuality fit, Figure figure) {
        List<String> left = new ArrayList<>();
        if (zero == Zero.UNPROVEN) {
            left.add(ZERO_UNPROVEN);
        }
        if (slack.noiseCounts().isEmpty() && !figure.isMean()) {
            left.add("the noise of the readings: the outing shows no slack line at rest");
        }
        if (angleUnbounded) {
            left.add(ANGLE_UNBOUNDED);
        }
        sheaveFriction.ifPresent(left::add);
        fit.directions().leftOut().ifPresent(left::add);
        if (fit.referencePercent().isEmpty()) {
            left.add(REFERENCE_UNSTATED);
        }
        return left;
    }
}
