package tautlog.rig;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import tautlog.config.ConfigException;
import tautlog.config.ConfigTable;
import tautlog.config.Problems;
import tautlog.config.Range;
import tautlog.config.Reading;
import tautlog.quantity.Angle;
import tautlog.quantity.Force;
import tautlog.quantity.ForceUnit;

/** Reads a whole {@code rig.toml}: asks for every key, tells all problems at once, then builds the {@link Rig}. */
final class RigFile {
    private static final Reading<ForceUnit> UNITS = Reading.oneOf(
            ForceUnit.ON_SCREEN.stream().collect(Collectors.toMap(ForceUnit::symbol, Function.identity())));

    private final ConfigTable root;
    private final Map<String, GearEntry> gearById = new LinkedHashMap<>();
    private final List<String> gearNames = new ArrayList<>();

    private RigFile(ConfigTable root) {
        this.root = root;
    }

    static Rig parse(String fileName, String toml) throws ConfigException {
        Problems problems = new Problems(fileName);
        ConfigTable root = ConfigTable.parse(problems, toml);
        Optional<Rig> rig = new RigFile(root).read();
        root.finish();
        problems.throwIfAny();
        return rig.orElseThrow();
    }

    private Optional<Rig> read() {
        root.required("schema", Reading.whole(1, 1));
        ForceUnit units = root.or("units", UNITS, ForceUnit.KN);
        Optional<ConfigTable> winch = root.requiredTable("winch");
        Optional<String> name = winch.flatMap(w -> w.required("name", Reading.name()));
        Optional<Force> ratedPull = winch.flatMap(w -> w.required("rated_pull", Reading.force()));
        Opening opening =
                winch.flatMap(w -> w.table("opening")).map(RigFile::opening).orElse(Opening.NONE);
        Optional<Cell> cell = root.table("cell").flatMap(RigFile::cell);
        Optional<ShaftEnd> sensor =
                root.table("shaft").flatMap(s -> s.required("sensor_at", Reading.oneOf(ShaftEnd.class)));
        readGear();
        Optional<Driveline> driveline = winch.flatMap(this::driveline);
        List<Hookup> hookups = hookups(cell);
        DetectSettings detect = root.table("detect")
                .map(table -> new DetectReader(table).read())
                .orElse(DetectSettings.DEFAULTS);
        if (name.isEmpty() || ratedPull.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Rig(
                name.get(),
                ratedPull.get().newtons(),
                hookups,
                detect,
                cell.flatMap(Cell::tensionAtCapacity),
                driveline,
                units,
                gear(),
                cell,
                sensor,
                opening));
    }

    private static Opening opening(ConfigTable table) {
        Reading<BigDecimal> hours = Reading.decimal(Range.fromZero());
        return new Opening(
                table.or("shaft_h", hours, BigDecimal.ZERO),
                table.or("pull_h", hours, BigDecimal.ZERO),
                table.or("pulls", Reading.whole(0, Integer.MAX_VALUE), 0));
    }

    private static Optional<Cell> cell(ConfigTable table) {
        Optional<CellPlace> at = table.required("at", Reading.oneOf(CellPlace.class));
        Optional<BigDecimal> capacity =
                table.optional("capacity", Reading.force()).map(Force::newtons);
        Optional<Angle> angle = Optional.empty();
        Optional<Angle> plusMinus = Optional.empty();
        if (at.isEmpty() || at.get().seesTwoLines()) {
            Reading<BigDecimal> degrees = Reading.decimal(Range.between("0", "180"));
            angle = (at.isEmpty()
                            ? table.optional("angle_between_lines_deg", degrees)
                            : table.required("angle_between_lines_deg", degrees))
                    .map(Angle::new);
            plusMinus = table.optional("angle_plus_minus_deg", Reading.decimal(Range.between("0", "30")))
                    .map(Angle::new);
        }
        if (angle.isPresent() && BlockAngle.isTooWide(angle.get())) {
            table.problem("angle_between_lines_deg", BlockAngle.found(angle.get()), BlockAngle.ALLOWED);
            return Optional.empty();
        }
        Optional<Angle> between = angle;
        Optional<Angle> off = plusMinus;
        return at.map(place -> new Cell(place, capacity, between, off));
    }

    private void readGear() {
        Map<String, Integer> lines = new HashMap<>();
        for (ConfigTable table : root.tables("gear", "id")) {
            table.writtenText("id").ifPresent(id -> {
                noteTwice(table, lines, id);
                if (!gearNames.contains(id)) {
                    gearNames.add(id);
                }
            });
            new GearReader(table).read().ifPresent(entry -> gearById.putIfAbsent(entry.id(), entry));
        }
    }

    private static void noteTwice(ConfigTable table, Map<String, Integer> lines, String id) {
        Integer first = lines.putIfAbsent(id, table.line("id"));
        if (first != null) {
            table.problem("id", '"' + id + "\" is taken already (line " + first + ")", "Give each its own id.");
        }
    }

    private List<Hookup> hookups(Optional<Cell> cell) {
        List<ConfigTable> tables = root.tables("hookup", "id");
        if (tables.isEmpty()) {
            root.problem("hookup", "no hookup is written", "Write [[hookup]] with id and items for each way you pull.");
        }
        Map<String, Integer> lines = new HashMap<>();
        Map<Integer, Integer> selectors = new HashMap<>();
        List<Hookup> hookups = new ArrayList<>();
        for (ConfigTable table : tables) {
            table.writtenText("id").ifPresent(id -> noteTwice(table, lines, id));
            Optional<Hookup> hookup = new HookupReader(table, gearById, gearNames, cell).read();
            hookup.ifPresent(found -> {
                noteSelectorTwice(table, selectors, found);
                noteSecondDefault(table, hookups, found);
                hookups.add(found);
            });
        }
        return hookups;
    }

    private static void noteSecondDefault(ConfigTable table, List<Hookup> before, Hookup hookup) {
        if (hookup.isDefault() && before.stream().anyMatch(Hookup::isDefault)) {
            table.problem("default", "there is a default already", "Only one hookup is the default.");
        }
    }

    private static void noteSelectorTwice(ConfigTable table, Map<Integer, Integer> selectors, Hookup hookup) {
        if (hookup.selector().isEmpty()) {
            return;
        }
        int position = hookup.selector().getAsInt();
        Integer first = selectors.putIfAbsent(position, table.line("selector"));
        if (first != null) {
            table.problem(
                    "selector", position + " is taken already (line " + first + ")", "Give each its own position.");
        }
    }

    private Optional<Driveline> driveline(ConfigTable winch) {
        return new DrivelineReader(winch).read(gearById.values());
    }

    private List<Gear> gear() {
        return gearById.values().stream()
                .map(entry -> entry.toGear(new Ratings(entry).find(entry.kind() == GearKind.ROPE && isLine(entry))))
                .toList();
    }

    /** A rope that says how strong it is, not only how thick, is the winch's own. */
    private static boolean isLine(GearEntry rope) {
        return new Ratings(rope).breakingForce().isPresent();
    }
}
