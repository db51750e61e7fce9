package tautlog.desk.calibration;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How the cell behaved, whatever is fitted to it.
 *
 * @param fullScaleCounts mean response at the greatest load less that at the least
 * @param spreadCounts repeatability: the widest spread between runs at one load come to the same way; empty when nothing was
 *     repeated
 * @param hysteresis down less up at the load where they differ most; empty when no load was come to both ways
 * @param zeroReturnCounts unloaded after less unloaded before a run's loads, of the run in which it is greatest; empty when
 *     no run has both
 */
record Behaviour(
        double fullScaleCounts,
        OptionalDouble spreadCounts,
        Optional<Loop> hysteresis,
        OptionalDouble zeroReturnCounts) {

    /** Down less up at one load; above 0 where unloading reads higher. */
    record Loop(double newtons, double counts) {}

    static Behaviour of(LoadReadings all, List<LoadStep> steps) {
        double fullScale =
                steps.get(steps.size() - 1).meanCounts() - steps.get(0).meanCounts();
        OptionalDouble spread = steps.stream()
                .flatMapToDouble(step -> step.spreadCounts().stream())
                .max();
        List<Loop> loops = loops(steps);
        Optional<Loop> widest = loops.stream().max(Comparator.comparingDouble(loop -> Math.abs(loop.counts())));
        return new Behaviour(fullScale, spread, widest, zeroReturn(all));
    }

    /** One for each load that was come to both ways, the least load first. */
    static List<Loop> loops(List<LoadStep> steps) {
        List<Loop> loops = new ArrayList<>();
        for (LoadStep step : steps) {
            step.hysteresisCounts().ifPresent(counts -> loops.add(new Loop(step.newtons(), counts)));
        }
        return loops;
    }

    private static OptionalDouble zeroReturn(LoadReadings all) {
        Map<String, List<LoadReading>> runs = new LinkedHashMap<>();
        all.readings()
                .forEach(reading -> runs.computeIfAbsent(reading.run(), run -> new ArrayList<>())
                        .add(reading));
        return runs.values().stream()
                .flatMap(run -> zeroReturnOf(run).stream())
                .max(Comparator.comparingDouble(Math::abs))
                .map(OptionalDouble::of)
                .orElse(OptionalDouble.empty());
    }

    /** The last unloaded reading less the first one, when the run carried a load between them. */
    private static Optional<Double> zeroReturnOf(List<LoadReading> run) {
        Optional<LoadReading> before = Optional.empty();
        Optional<LoadReading> after = Optional.empty();
        boolean loaded = false;
        for (LoadReading reading : run) {
            boolean unloaded = reading.newtons().signum() == 0;
            if (!unloaded) {
                loaded |= before.isPresent();
            } else if (before.isEmpty()) {
                before = Optional.of(reading);
            } else if (loaded) {
                after = Optional.of(reading);
            }
        }
        if (before.isEmpty() || after.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(after.get().counts().subtract(before.get().counts()).doubleValue());
    }
}
