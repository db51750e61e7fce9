package tautlog.desk.calibration;

import java.math.BigDecimal;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/** All readings at one load. */
record LoadStep(double newtons, List<LoadReading> readings) {
    LoadStep {
        readings = List.copyOf(readings);
    }

    /** The steps of a calibration, the least load first. */
    static List<LoadStep> of(LoadReadings all) {
        Map<BigDecimal, List<LoadReading>> byLoad = all.readings().stream()
                .collect(Collectors.groupingBy(
                        reading -> reading.newtons().stripTrailingZeros(), TreeMap::new, Collectors.toList()));
        return byLoad.entrySet().stream()
                .map(entry -> new LoadStep(entry.getKey().doubleValue(), entry.getValue()))
                .toList();
    }

    double meanCounts() {
        return counts(readings.stream()).average().orElseThrow();
    }

    /** Empty when no reading came that way. */
    OptionalDouble meanCounts(Direction direction) {
        return counts(along(direction)).average();
    }

    /** Down less up, counts; empty when one of them is missing. */
    OptionalDouble hysteresisCounts() {
        OptionalDouble up = meanCounts(Direction.UP);
        OptionalDouble down = meanCounts(Direction.DOWN);
        return up.isPresent() && down.isPresent()
                ? OptionalDouble.of(down.getAsDouble() - up.getAsDouble())
                : OptionalDouble.empty();
    }

    /** Greatest less least of readings that came the same way, the wider of the ways; empty where each came once. */
    OptionalDouble spreadCounts() {
        return Stream.of(Direction.values())
                .map(way -> byRun(way))
                .filter(runs -> runs.length > 1)
                .mapToDouble(runs -> DoubleStream.of(runs).max().orElseThrow()
                        - DoubleStream.of(runs).min().orElseThrow())
                .max();
    }

    /** One mean for each run; without names of runs each reading stands for one. */
    private double[] byRun(Direction direction) {
        Map<String, List<LoadReading>> runs = along(direction)
                .collect(Collectors.groupingBy(
                        reading -> reading.run().isEmpty() ? "line " + reading.line() : "run " + reading.run()));
        return runs.values().stream()
                .map(Collection::stream)
                .mapToDouble(run -> counts(run).average().orElseThrow())
                .toArray();
    }

    private Stream<LoadReading> along(Direction direction) {
        return readings.stream().filter(reading -> reading.direction() == direction);
    }

    private static DoubleStream counts(Stream<LoadReading> some) {
        return some.mapToDouble(reading -> reading.counts().doubleValue());
    }
}
