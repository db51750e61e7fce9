package tautlog.service;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tautlog.config.ConfigException;
import tautlog.config.ConfigTable;
import tautlog.config.Problems;
import tautlog.config.Range;
import tautlog.config.Reading;

/** The tasks of a {@code service.toml}, in its order. */
public record ServicePlan(List<Task> tasks) {
    /** A task on the winch itself. */
    private static final String WINCH = "winch";
    /** Chosen: due soon from a tenth before, overdue from a tenth after. */
    private static final BigDecimal PERCENT = BigDecimal.TEN;

    private static final Reading<BigDecimal> TOLERANCE = Reading.decimal(Range.between("0", "100"));
    private static final Reading<BigDecimal> INTERVAL = Reading.decimal(Range.aboveZeroTo("1000000"));
    private static final Reading<BigDecimal> WHOLE = new Reading<>(
            "a whole number from 1",
            written -> BigDecimal.valueOf(Reading.whole(1, 1_000_000).read(written)));
    private static final Reading<String> FINDING = Reading.oneOf(
            Stream.of("overload", "shock", "jolt", "drop", "stall").collect(Collectors.toMap(w -> w, w -> w)));

    public ServicePlan {
        tasks = List.copyOf(tasks);
    }

    /**
     * Reads a plan.
     *
     * @param fileName the name that messages show; nothing is opened
     * @throws ConfigException with every problem of the text, if there is one
     */
    public static ServicePlan parse(String fileName, String toml) throws ConfigException {
        Problems problems = new Problems(fileName);
        ConfigTable root = ConfigTable.parse(problems, toml);
        root.required("schema", Reading.whole(1, 1));
        List<ConfigTable> tables = root.tables("task", "id");
        if (tables.isEmpty()) {
            root.problem("task", "no task is written", "Write [[task]] with id, title, on and every for each.");
        }
        Map<String, Integer> lines = new HashMap<>();
        List<Task> tasks = new ArrayList<>();
        for (ConfigTable table : tables) {
            table.writtenText("id").ifPresent(id -> noteTwice(table, lines, id));
            task(table).ifPresent(tasks::add);
        }
        root.finish();
        problems.throwIfAny();
        return new ServicePlan(tasks);
    }

    private static void noteTwice(ConfigTable table, Map<String, Integer> lines, String id) {
        Integer first = lines.putIfAbsent(id, table.line("id"));
        if (first != null) {
            table.problem("id", '"' + id + "\" is taken already (line " + first + ")", "Give each its own id.");
        }
    }

    private static Optional<Task> task(ConfigTable table) {
        Optional<String> id = table.required("id", Reading.name());
        Optional<String> title = table.required("title", Reading.text());
        Optional<String> on = table.required("on", Reading.name());
        Map<Meter, BigDecimal> every =
                table.table("every").map(ServicePlan::every).orElse(Map.of());
        Optional<String> after = table.optional("after", FINDING);
        BigDecimal early = table.or("early_percent", TOLERANCE, PERCENT);
        BigDecimal late = table.or("late_percent", TOLERANCE, PERCENT);
        Optional<String> source = table.optional("source", Reading.text());
        Optional<String> how = table.optional("how", Reading.text());
        if (!table.has("every") && !table.has("after")) {
            table.problem(
                    "every",
                    "is missing, and so is after",
                    "Write every = { shaft_h = 8 } or after = \"overload\", or both.");
        }
        if (id.isEmpty() || title.isEmpty() || on.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Task(
                id.get(), title.get(), on.filter(gear -> !gear.equals(WINCH)), every, after, early, late, source, how));
    }

    private static Map<Meter, BigDecimal> every(ConfigTable table) {
        Map<Meter, BigDecimal> every = new EnumMap<>(Meter.class);
        int before = table.problemsSoFar();
        for (Meter meter : Meter.values()) {
            boolean isCount = meter == Meter.PULLS || !meter.addsUp();
            table.optional(meter.key(), isCount ? WHOLE : INTERVAL).ifPresent(limit -> every.put(meter, limit));
        }
        if (every.isEmpty() && table.problemsSoFar() == before) {
            table.problem(
                    "shaft_h",
                    "no interval is written",
                    "Write one or more of "
                            + Stream.of(Meter.values()).map(Meter::key).collect(Collectors.joining(", ")) + ".");
        }
        return every;
    }

    /** The task of that id. */
    public Optional<Task> task(String id) {
        return tasks.stream().filter(task -> task.id().equals(id)).findFirst();
    }
}
