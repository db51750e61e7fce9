package tautlog.desk.calibration;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import tautlog.config.ConfigException;
import tautlog.config.Problems;
import tautlog.quantity.ForceUnit;

/** Turns rows of a {@link ReadingsTable} into readings and keeps what is wrong with them. Not thread-safe. */
final class RowReader {
    private static final Pattern NUMBER = Pattern.compile("[+-]?\\d{1,15}(\\.\\d{1,15})?([eE][+-]?\\d{1,2})?");
    private static final Pattern COMMA = Pattern.compile("[+-]?\\d+,\\d+");
    private static final String SHUNT = "shunt";
    /** The least and greatest number that a count of a recording can be. */
    private static final BigDecimal GREATEST_COUNT = BigDecimal.valueOf(Integer.MAX_VALUE);

    /** Of counts that scatter by less than half a count a mean is hardly finer than one of them. */
    private static final BigDecimal ROUNDS_AWAY = new BigDecimal("0.5");

    private static final BigDecimal LEAST_NEWTONS = new BigDecimal("0.001");
    private static final BigDecimal GREATEST_NEWTONS = new BigDecimal("1e9");

    private final Problems problems;
    private final List<LoadReading> readings = new ArrayList<>();
    private final List<BigDecimal> shuntSteps = new ArrayList<>();
    private final Set<ForceUnit> units = new LinkedHashSet<>();
    private Optional<BigDecimal> loadStep = Optional.empty();
    private int countDecimals;
    private boolean hasQuietMean;
    private Optional<Instant> lastAt = Optional.empty();

    RowReader(Problems problems) {
        this.problems = problems;
    }

    /** The cells of one row by the names of their columns; empty where there is none. */
    interface Row {
        String cell(String column);
    }

    void row(int line, Row row) {
        int before = problems.count();
        Optional<BigDecimal> load = load(line, row.cell("load"));
        Optional<ForceUnit> unit = unit(line, row.cell("unit"));
        Optional<BigDecimal> counts = counts(line, row.cell("counts"));
        Optional<Direction> direction = direction(line, row.cell("direction"));
        time(line, row.cell("time"));
        Optional<BigDecimal> sd =
                row.cell("sd_counts").isEmpty() ? Optional.empty() : number(line, "sd_counts", row.cell("sd_counts"));
        if (problems.count() > before) {
            return;
        }
        BigDecimal newtons = load.orElseThrow().multiply(unit.orElseThrow().newtons());
        mustBeALoad(line, newtons);
        if (problems.count() > before) {
            return;
        }
        if (isShunt(row)) {
            shunt(line, newtons, counts.orElseThrow());
            return;
        }
        units.add(unit.orElseThrow());
        step(load.orElseThrow(), unit.orElseThrow());
        countDecimals = Math.max(
                countDecimals, counts.orElseThrow().stripTrailingZeros().scale());
        hasQuietMean |= sd.filter(counted -> counted.compareTo(ROUNDS_AWAY) < 0).isPresent();
        readings.add(new LoadReading(
                line,
                row.cell("load") + " " + unit.orElseThrow().symbol(),
                newtons,
                counts.orElseThrow(),
                direction.orElseThrow(),
                row.cell("run")));
    }

    private static boolean isShunt(Row row) {
        return row.cell("direction").equalsIgnoreCase(SHUNT) || row.cell("run").equalsIgnoreCase(SHUNT);
    }

    /** The resistor is switched on under a load that was read just before without it. */
    private void shunt(int line, BigDecimal newtons, BigDecimal counts) {
        for (int i = readings.size() - 1; i >= 0; i--) {
            if (readings.get(i).newtons().compareTo(newtons) == 0) {
                shuntSteps.add(counts.subtract(readings.get(i).counts()));
                return;
            }
        }
        problems.add(
                line,
                SHUNT,
                "no reading at this load without the shunt stands before it",
                "Take one first, and the shunt after it.");
    }

    private void step(BigDecimal load, ForceUnit unit) {
        BigDecimal step = unit.newtons()
                .movePointLeft(Math.max(0, load.stripTrailingZeros().scale()));
        loadStep = Optional.of(loadStep.map(least -> least.min(step)).orElse(step));
    }

    private Optional<BigDecimal> load(int line, String text) {
        Optional<BigDecimal> load = number(line, "load", text);
        if (load.isPresent() && load.get().signum() < 0) {
            problems.add(
                    line, "load", ReadingsTable.show(text) + " is below 0", "A reference load pulls: write 0 or more.");
        }
        return load;
    }

    private void mustBeALoad(int line, BigDecimal newtons) {
        boolean tooGreat = newtons.compareTo(GREATEST_NEWTONS) > 0;
        boolean tooSmall = newtons.signum() > 0 && newtons.compareTo(LEAST_NEWTONS) < 0;
        if (tooGreat || tooSmall) {
            problems.add(
                    line,
                    "load",
                    "this is no load that anybody hangs",
                    "Allowed: 0, or from 0.001 N to 1000000000 N. Look at the number and its unit.");
        }
    }

    private Optional<BigDecimal> counts(int line, String text) {
        Optional<BigDecimal> counts = number(line, "counts", text);
        if (counts.isPresent() && counts.get().abs().compareTo(GREATEST_COUNT) > 0) {
            problems.add(
                    line,
                    "counts",
                    ReadingsTable.show(text) + " is more than any converter says",
                    "Allowed: from -2147483647 to 2147483647.");
        }
        return counts;
    }

    private Optional<BigDecimal> number(int line, String column, String text) {
        if (NUMBER.matcher(text).matches()) {
            return Optional.of(new BigDecimal(text));
        }
        String next = COMMA.matcher(text).matches()
                ? "Write the number with a point (\"" + text.replace(',', '.') + "\")."
                : "Write a plain number with a point.";
        problems.add(
                line,
                column,
                text.isEmpty() ? "nothing is written" : ReadingsTable.show(text) + " is not a number",
                next);
        return Optional.empty();
    }

    private Optional<ForceUnit> unit(int line, String text) {
        Optional<ForceUnit> unit = ForceUnit.of(text);
        if (unit.isEmpty()) {
            String symbols =
                    Arrays.stream(ForceUnit.values()).map(ForceUnit::symbol).collect(Collectors.joining(", "));
            problems.add(
                    line,
                    "unit",
                    text.isEmpty()
                            ? "the unit is missing, and a load without one is not guessed"
                            : ReadingsTable.show(text) + " is not a unit of force",
                    "Allowed: " + symbols + ".");
        }
        return unit;
    }

    private Optional<Direction> direction(int line, String text) {
        switch (text.toLowerCase(Locale.ROOT)) {
            case "", SHUNT -> {
                return Optional.of(Direction.UNSAID);
            }
            case "up" -> {
                return Optional.of(Direction.UP);
            }
            case "down" -> {
                return Optional.of(Direction.DOWN);
            }
            default -> {
                problems.add(
                        line,
                        "direction",
                        ReadingsTable.show(text) + " is not a direction",
                        "Allowed: up (the load was come to from below), down (from above), shunt, or nothing.");
                return Optional.empty();
            }
        }
    }

    private void time(int line, String text) {
        if (text.isEmpty()) {
            return;
        }
        try {
            Instant at = OffsetDateTime.parse(text).toInstant();
            lastAt = Optional.of(lastAt.filter(last -> last.isAfter(at)).orElse(at));
        } catch (DateTimeParseException e) {
            problems.add(
                    line,
                    "time",
                    ReadingsTable.show(text) + " is not a time with its zone",
                    "Write 2026-05-02T08:00:10Z, or leave the cell empty.");
        }
    }

    /** @throws ConfigException with all problems so far, also when there are too few readings to fit anything */
    LoadReadings finish(String file, List<String> unused) throws ConfigException {
        problems.throwIfAny();
        long loads = readings.stream()
                .map(reading -> reading.newtons().stripTrailingZeros())
                .distinct()
                .count();
        if (readings.size() < 3 || loads < 2) {
            int line = readings.stream()
                    .map(LoadReading::line)
                    .max(Comparator.naturalOrder())
                    .orElse(1);
            problems.add(
                    line,
                    "",
                    readings.size() + " readings at " + loads + " loads are too few for any calibration",
                    "Three readings at two loads are the least; take five loads or more, up and down, twice.");
            problems.throwIfAny();
        }
        return new LoadReadings(
                file,
                readings,
                shuntSteps,
                List.copyOf(units),
                loadStep.orElseThrow(),
                BigDecimal.ONE.movePointLeft(hasQuietMean ? 0 : Math.max(0, countDecimals)),
                lastAt,
                unused);
    }
}
