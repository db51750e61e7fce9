package tautlog.rig;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import tautlog.quantity.Length;

/**
 * Finds a gear's working load limit: its marking first (49 CFR 393.108(b)), then a published table by kind, grade and size;
 * for the winch's own line half its minimum breaking force, never the table. What has neither is a problem that says what
 * to write.
 */
final class Ratings {
    private static final String TABLE = "49 CFR 393.108, table of ";
    private static final String BORROWED =
            "The table rates cargo tie-downs; for pulling it is borrowed. The marking on the gear governs.";
    private static final int UNMARKED_GRADE = 30;
    private static final BigDecimal LINE_DESIGN_FACTOR = new BigDecimal("2");

    private final GearEntry gear;

    Ratings(GearEntry gear) {
        this.gear = gear;
    }

    /**
     * The rating, straight.
     *
     * @param isWinchLine whether it is asked for as the winch's own line
     * @return empty when there is none
     */
    Optional<Rating> find(boolean isWinchLine) {
        if (gear.wll().isPresent()) {
            return Optional.of(new Rating(gear.wll().get().newtons(), "marking on the gear", List.of()));
        }
        return switch (gear.kind()) {
            case CHAIN -> gear.size().flatMap(this::chain);
            case WEB -> gear.size().flatMap(this::web);
            case ROPE -> isWinchLine ? line() : gear.size().flatMap(this::ropeSling);
            case BLOCK, HOOK, SHACKLE, OTHER -> Optional.empty();
        };
    }

    /** What to write so that {@link #find} finds something. */
    String advice(boolean isWinchLine) {
        return switch (gear.kind()) {
            case CHAIN ->
                "Write wll from the marking, or grade and size as in 49 CFR 393.108. Sizes: "
                        + TieDownTables.CHAIN
                                .under(Integer.toString(gear.grade().orElse(UNMARKED_GRADE)))
                                .sizes() + ".";
            case WEB -> "Write wll from the label, or size, the width: " + TieDownTables.WEB.sizes() + ".";
            case ROPE ->
                isWinchLine
                        ? "Write wll from the marking, or breaking_force, or diameter, construction and wire_grade."
                        : "Write wll from the marking, or a diameter: " + TieDownTables.ROPE.sizes() + ".";
            case BLOCK, HOOK, SHACKLE, OTHER ->
                "Write wll = \"…\" from its marking. Without a marking it has no place in a pull.";
        };
    }

    /** Minimum breaking force of a rope in newtons, as marked or worked out from its construction. */
    Optional<BigDecimal> breakingForce() {
        return markedBreakingForce().or(this::constructionForce);
    }

    Optional<BigDecimal> markedBreakingForce() {
        return gear.rope().flatMap(GearEntry.RopeData::breakingForce).map(force -> force.newtons());
    }

    private Optional<BigDecimal> constructionForce() {
        GearEntry.RopeData rope = gear.rope().orElseThrow();
        OptionalInt wireGrade = rope.wireGrade();
        if (gear.size().isEmpty() || rope.construction().isEmpty() || wireGrade.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(
                RopeStrength.newtons(rope.construction().get(), gear.size().get(), wireGrade.getAsInt()));
    }

    private Optional<Rating> line() {
        String source = markedBreakingForce().isPresent()
                ? "half the marked breaking force"
                : "half the minimum breaking force by EN 12385-4 (K' d2 R / 1000)";
        List<String> notes =
                List.of("A pulling winch's own line is used up to half its breaking force: practice, no source.");
        return breakingForce().map(force -> new Rating(force.divide(LINE_DESIGN_FACTOR), source, notes));
    }

    private Optional<Rating> chain(Length size) {
        int grade = gear.grade().orElse(UNMARKED_GRADE);
        List<String> notes = new ArrayList<>(List.of(BORROWED));
        if (gear.grade().isEmpty()) {
            notes.add("No grade is written: taken as grade 30 (49 CFR 393.108(d)).");
        }
        if (grade == 70) {
            notes.add("Grade 70 is no lifting chain.");
        }
        return TieDownTables.chainNewtons(grade, size)
                .map(newtons -> new Rating(newtons, TABLE + "chain, grade " + grade, notes));
    }

    private Optional<Rating> web(Length width) {
        return TieDownTables.webNewtons(width)
                .map(newtons -> new Rating(newtons, TABLE + "synthetic webbing", List.of(BORROWED)));
    }

    private Optional<Rating> ropeSling(Length diameter) {
        return TieDownTables.ropeNewtons(diameter)
                .map(newtons -> new Rating(newtons, TABLE + "wire rope", List.of(BORROWED)));
    }
}
