package tautlog.desk.calibration;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import tautlog.calibration.Directions;
import tautlog.calibration.FitQuality;
import tautlog.config.ConfigException;
import tautlog.config.Problems;

/**
 * All that a set of readings tells of a load cell: start here.
 *
 * <p>Every reading counts alike in the fit, those on the way down too: in the line the load goes both ways, so that hysteresis
 * belongs to the scatter. Figures are static; how the cell follows a shock they do not say (ASTM E74 is for static force).
 *
 * @param countStep by how much the counts step
 * @param line the straight line, fitted always
 * @param curve with F²; empty with fewer than three loads or four readings
 * @param chosen the one of them that is written
 */
public record CalibrationStudy(
        LoadReadings readings,
        CalibrationRequest request,
        List<LoadStep> steps,
        CountStep countStep,
        Shape line,
        Optional<Shape> curve,
        Shape chosen,
        DegreeChoice choice,
        Behaviour behaviour) {
    /** Source: ASTM E74, the factor of the lower limit. */
    private static final double LOWER_LIMIT = 2.4;

    /** Chosen: a slope of fewer standard deviations is no response; a real one has hundreds. */
    private static final double BEYOND_SCATTER = 3;
    /** Chosen: what a double loses in the fit is less. */
    private static final double ROUNDING = 1e-12;

    public CalibrationStudy {
        steps = List.copyOf(steps);
    }

    /**
     * Fits {@code readings}.
     *
     * @throws ConfigException if no calibration can come of them: the counts do not rise with the load, or the degree that is
     *     asked for has too few loads
     */
    public static CalibrationStudy of(LoadReadings readings, CalibrationRequest request) throws ConfigException {
        List<LoadStep> steps = LoadStep.of(readings);
        Shape line = Shape.of(readings, steps, 1);
        CountStep countStep = CountStep.of(readings, steps);
        boolean enough = steps.size() >= 3 && readings.readings().size() >= 4;
        Optional<Shape> curve = enough ? Optional.of(Shape.of(readings, steps, 2)) : Optional.empty();
        double least = steps.get(0).newtons();
        double greatest = steps.get(steps.size() - 1).newtons();
        DegreeChoice choice = DegreeChoice.of(
                line, curve, steps.size(), least, greatest, countStep.counts().doubleValue());
        int degree = request.degree().orElse(choice.recommended());
        mustBeUsable(readings, line, curve, degree, greatest);
        Shape chosen = degree == 1 ? line : curve.orElseThrow();
        return new CalibrationStudy(
                readings, request, steps, countStep, line, curve, chosen, choice, Behaviour.of(readings, steps));
    }

    private static void mustBeUsable(
            LoadReadings readings, Shape line, Optional<Shape> curve, int degree, double greatest)
            throws ConfigException {
        Problems problems = new Problems(readings.file());
        int at = readings.readings().get(0).line();
        if (!risesBeyondScatter(readings, line.fit())) {
            problems.add(
                    at,
                    "counts",
                    "the counts do not rise with the load beyond their scatter",
                    "Look for mixed-up columns. Of a cell wired the other way round swap the two signal wires, then read again.");
        } else if (degree == 2 && curve.isEmpty()) {
            problems.add(
                    at,
                    "load",
                    "a curve needs four readings at three loads or more",
                    "Take more loads, or use --degree 1.");
        } else if (degree == 2
                && !curve.map(bent -> bent.fit().rises(0, greatest)).orElse(false)) {
            problems.add(
                    at,
                    "counts",
                    "the fitted curve does not rise all the way to the greatest load",
                    "One count would stand for two loads. Use --degree 1, and look for misread lines.");
        }
        problems.throwIfAny();
    }

    private static boolean risesBeyondScatter(LoadReadings readings, ResponseFit line) {
        double slope = line.coefficients().get(1);
        double rise = slope * DoubleStream.of(readings.newtons()).max().orElse(0);
        double greatest =
                DoubleStream.of(readings.counts()).map(Math::abs).max().orElse(0);
        return slope > BEYOND_SCATTER * line.sd(1) && rise > ROUNDING * greatest;
    }

    /** What no uncertainty here holds, in words. */
    List<String> leavesOut() {
        List<String> left = new ArrayList<>(ExpandedUncertainty.leavesOut(quality(), behaviour));
        if (degree() < choice.recommended()) {
            left.add(0, "the wrong shape of a line that is not good enough");
        }
        if (!countStep.isSeen()) {
            left.add(
                    "a display that steps by more than " + resolutionWords() + " (no two readings at one load differ)");
        }
        return left;
    }

    /** {@code 1 counts (10 N)}. */
    String resolutionWords() {
        double step = countStep.counts().doubleValue();
        return Digits.three(step) + " counts (" + Digits.three(chosen.newtons(step)) + " N)";
    }

    public int degree() {
        return chosen.fit().degree();
    }

    public double leastNewtons() {
        return steps.get(0).newtons();
    }

    /** Beyond it nothing is known. */
    public double greatestNewtons() {
        return steps.get(steps.size() - 1).newtons();
    }

    /** As the file keeps it. */
    public FitQuality quality() {
        return new FitQuality(
                chosen.fit().residualSd(),
                countStep.counts().doubleValue(),
                chosen.fit().degreesOfFreedom(),
                chosen.fit().covariance(),
                leastNewtons(),
                greatestNewtons(),
                request.referencePercent()
                        .map(percent -> OptionalDouble.of(percent.doubleValue()))
                        .orElse(OptionalDouble.empty()),
                directions());
    }

    /**
     * From which side loads between the least and the greatest were come to. At the ends the two ways meet: readings there tell
     * nothing of hysteresis.
     */
    private Directions directions() {
        boolean up = isInnerLoadComeTo(Direction.UP);
        boolean down = isInnerLoadComeTo(Direction.DOWN);
        return up && down ? Directions.BOTH : up ? Directions.UP : down ? Directions.DOWN : Directions.UNKNOWN;
    }

    private boolean isInnerLoadComeTo(Direction way) {
        return readings.readings().stream()
                .filter(reading -> reading.direction() == way)
                .mapToDouble(reading -> reading.newtons().doubleValue())
                .anyMatch(newtons -> newtons > leastNewtons() && newtons < greatestNewtons());
    }

    /**
     * ASTM E74: 2.4 times the standard deviation √(Σd²/(n − m − 1)), in counts; not below the resolution (from memory, as the
     * factor is).
     */
    public double lowerLimitCounts() {
        return Math.max(
                LOWER_LIMIT * chosen.fit().residualSd(), countStep.counts().doubleValue());
    }

    /** The same in newtons, by the slope at zero load. */
    public double lowerLimitNewtons() {
        return chosen.newtons(lowerLimitCounts());
    }

    /** When the last reading was taken; empty when nobody said it. */
    public Optional<Instant> calibratedAt() {
        return request.at().or(readings::lastAt);
    }

    /** By how much the shunt resistor raised the counts: as asked, else the mean of the readings' steps. */
    public Optional<BigDecimal> shuntStepCounts() {
        return request.shuntStepCounts()
                .or(() -> readings.shuntSteps().stream()
                        .reduce(BigDecimal::add)
                        .map(sum -> sum.divide(
                                BigDecimal.valueOf(readings.shuntSteps().size()), MathContext.DECIMAL64)));
    }

    /** Counts of the reading less those of the chosen fit, as newtons at that load. */
    double residualNewtons(int reading) {
        double newtons = readings.readings().get(reading).newtons().doubleValue();
        return chosen.residuals().get(reading) / chosen.fit().slope(newtons);
    }

    ExpandedUncertainty uncertainty() {
        return new ExpandedUncertainty(chosen.fit(), quality());
    }

    List<Caution> cautions() {
        return new Cautions(this).all();
    }

    /** A share of full scale; empty when the counts of the greatest and the least load are the same. */
    OptionalDouble ofFullScale(OptionalDouble counts) {
        return counts.isEmpty() || behaviour.fullScaleCounts() == 0
                ? OptionalDouble.empty()
                : OptionalDouble.of(counts.getAsDouble() / behaviour.fullScaleCounts());
    }
}
