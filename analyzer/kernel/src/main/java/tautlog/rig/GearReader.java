package tautlog.rig;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.Collectors;
import tautlog.config.ConfigTable;
import tautlog.config.Range;
import tautlog.config.Reading;
import tautlog.config.Refusal;
import tautlog.quantity.Force;
import tautlog.quantity.Length;

/** Reads one {@code [[gear]]}. Which keys it may have depends on its kind. */
final class GearReader {
    /** Marks of 49 CFR 393.108: grade 30 is stamped 3, 30 or 300, and so on. */
    private static final Map<String, Integer> GRADES = grades();

    private static final Reading<Integer> GRADE = new Reading<>("a chain grade (70)", written -> {
        Integer grade = GRADES.get(String.valueOf(written));
        if (grade == null) {
            throw new Refusal(
                    Reading.show(written) + " is not a chain grade",
                    "Allowed: 30, 43, 70, 80, 100. A chain without a legible grade is left without: it is taken as grade 30.");
        }
        return grade;
    });

    private static final Map<String, BigDecimal> ENDS =
            Map.of("swaged", BigDecimal.ONE, "clips", new BigDecimal("0.8"), "knot", new BigDecimal("0.8"));
    /** How much of a rope's strength its end keeps: a word or a number. */
    static final Reading<BigDecimal> TERMINATION = new Reading<>(
            "\"swaged\", \"clips\", \"knot\" or a number above 0 to 1",
            written -> written instanceof String word
                    ? Reading.oneOf(ENDS).read(word)
                    : Reading.decimal(Range.aboveZeroTo("1")).read(written));

    private static final Reading<BigDecimal> MARKED_FACTOR = Reading.decimal(Range.between("1", "20"));
    private static final Reading<String> CONSTRUCTION = Reading.oneOf(
            RopeStrength.FACTORS.keySet().stream().collect(Collectors.toMap(Function.identity(), Function.identity())));

    private final ConfigTable table;

    GearReader(ConfigTable table) {
        this.table = table;
    }

    /** Empty when not even its id or kind can be read; the problems are noted. */
    Optional<GearEntry> read() {
        int before = table.problemsSoFar();
        Optional<String> id = table.required("id", Reading.name());
        Optional<GearKind> kind = table.required("kind", Reading.oneOf(GearKind.class));
        if (LoadedItem.CELL.equals(id.orElse(""))) {
            table.problem("id", "\"cell\" is the load cell's own id", "Choose another id.");
        }
        if (id.isEmpty() || kind.isEmpty()) {
            table.knowEverything();
            return Optional.empty();
        }
        return Optional.of(entry(id.get(), kind.get(), before));
    }

    private GearEntry entry(String id, GearKind kind, int before) {
        Optional<Force> wll = table.optional("wll", Reading.force());
        OptionalInt grade = kind == GearKind.CHAIN ? optionalInt("grade", GRADE) : OptionalInt.empty();
        Optional<Length> size = size(kind);
        Optional<Length> thickness = kind == GearKind.CHAIN ? thickness(size) : Optional.empty();
        Optional<GearEntry.RopeData> rope = kind == GearKind.ROPE ? Optional.of(rope()) : Optional.empty();
        Optional<BigDecimal> proof = table.optional("proof_factor", MARKED_FACTOR);
        Optional<BigDecimal> design = table.optional("design_factor", MARKED_FACTOR);
        if (proof.isPresent() && design.isPresent() && proof.get().compareTo(design.get()) >= 0) {
            table.problem("proof_factor", proof.get() + " is not below design_factor", "A proof load breaks nothing.");
        }
        int count = table.or("count", Reading.whole(1, 10_000), 1);
        Optional<String> serial = table.optional("serial", Reading.text());
        var fitted = table.optional("fitted", Reading.date());
        var lastInspection = table.optional("last_inspection", Reading.date());
        boolean isWhole = table.problemsSoFar() == before;
        return new GearEntry(
                table,
                isWhole,
                id,
                kind,
                wll,
                grade,
                size,
                thickness,
                rope,
                proof,
                design,
                count,
                serial,
                fitted,
                lastInspection);
    }

    private Optional<Length> size(GearKind kind) {
        return switch (kind) {
            case CHAIN, WEB -> table.optional("size", Reading.length());
            case ROPE -> table.optional("diameter", Reading.length());
            case BLOCK, HOOK, SHACKLE, OTHER -> Optional.empty();
        };
    }

    private Optional<Length> thickness(Optional<Length> size) {
        Optional<Length> thickness = table.optional("link_thickness", Reading.length());
        if (thickness.isPresent() && !table.has("size")) {
            table.problem("link_thickness", "says nothing without the size", "Write size = \"5/16 in\" too.");
        } else if (thickness.isPresent()
                && size.isPresent()
                && ChainWear.leastMillimetres(size.get()).isEmpty()) {
            table.problem(
                    "link_thickness",
                    "no least thickness is published for " + size.get(),
                    "Leave the key out and follow the maker's limit of wear.");
        }
        return thickness;
    }

    private GearEntry.RopeData rope() {
        return new GearEntry.RopeData(
                table.optional("construction", CONSTRUCTION),
                optionalInt("wire_grade", Reading.whole(1000, 2400)),
                table.optional("breaking_force", Reading.force()),
                table.optional("termination", TERMINATION));
    }

    private OptionalInt optionalInt(String key, Reading<Integer> reading) {
        return table.optional(key, reading).map(OptionalInt::of).orElse(OptionalInt.empty());
    }

    private static Map<String, Integer> grades() {
        Map<String, Integer> marks = new HashMap<>();
        for (int grade : new int[] {30, 43, 70, 80, 100}) {
            marks.put(Integer.toString(grade), grade);
            marks.put(Integer.toString(grade / 10), grade);
            marks.put(Integer.toString(grade == 100 ? 1000 : grade * 10), grade);
        }
        return Map.copyOf(marks);
    }
}
