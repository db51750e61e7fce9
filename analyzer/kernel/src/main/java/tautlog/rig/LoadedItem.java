package tautlog.rig;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import tautlog.quantity.Angle;

/**
 * One item of a hookup: how much of the line's tension it carries, and how much it may.
 *
 * @param gear id of the gear; {@code cell} for the load cell, which is an item of every hookup
 * @param as its place in the hookup, as written in the rig: {@code straight}, {@code choker}, {@code block}, …
 * @param multiple load on the item / tension in the line
 * @param allowedNewtons its working load limit as used here
 * @param allowedIsAtMost true when {@code allowedNewtons} is only an upper bound
 * @param proofNewtons empty when none is published: the item takes no part in that band
 * @param breakingNewtons empty when none is published
 * @param notes what a reader must know: where the rating comes from, what was assumed
 * @param turn the line that a fixed block or its strap turns; empty for everything else
 */
public record LoadedItem(
        String gear,
        String as,
        BigDecimal multiple,
        BigDecimal allowedNewtons,
        boolean allowedIsAtMost,
        Optional<BigDecimal> proofNewtons,
        Optional<BigDecimal> breakingNewtons,
        List<String> notes,
        Optional<Turn> turn) {
    /** The gear id of the load cell. */
    public static final String CELL = "cell";

    public LoadedItem {
        notes = List.copyOf(notes);
    }

    /** Whether it is the rope on the winch's drum. */
    public boolean isWinchLine() {
        return as.equals(Place.WINCH_LINE.word());
    }

    /** An item that turns no line. */
    public LoadedItem(
            String gear,
            String as,
            BigDecimal multiple,
            BigDecimal allowedNewtons,
            boolean allowedIsAtMost,
            Optional<BigDecimal> proofNewtons,
            Optional<BigDecimal> breakingNewtons,
            List<String> notes) {
        this(
                gear,
                as,
                multiple,
                allowedNewtons,
                allowedIsAtMost,
                proofNewtons,
                breakingNewtons,
                notes,
                Optional.empty());
    }

    /** The same item with this angle between the lines at its block; itself when it turns no line. */
    LoadedItem turnedTo(Angle betweenLines) {
        return turn.map(line -> new LoadedItem(
                        gear,
                        as,
                        line.multiple(betweenLines),
                        allowedNewtons,
                        allowedIsAtMost,
                        proofNewtons,
                        breakingNewtons,
                        notes.stream()
                                .filter(note -> !note.equals(Turn.NOT_WRITTEN))
                                .toList(),
                        Optional.of(new Turn(line.lineMultiple(), Optional.of(betweenLines)))))
                .orElse(this);
    }

    /** One line for a person: where its figures come from, what was assumed. */
    public String assumptions() {
        return gear + ": " + String.join(" ", notes);
    }

    /** Its load at this tension in the line, in newtons, exact. */
    public BigDecimal loadNewtons(BigDecimal tensionNewtons) {
        return multiple.multiply(tensionNewtons);
    }

    /** Load / allowed load at this tension, to 34 digits; "at least" when the allowed load is only an upper bound. */
    public BigDecimal share(BigDecimal tensionNewtons) {
        return loadNewtons(tensionNewtons).divide(allowedNewtons, Angle.DIGITS);
    }

    /** The line's tension at which its load reaches the allowed one. */
    public BigDecimal tensionAtAllowed() {
        return quotient(allowedNewtons, multiple);
    }

    /** The line's tension at which its load reaches the published breaking load. */
    public Optional<BigDecimal> tensionAtBreaking() {
        return breakingNewtons.map(breaking -> quotient(breaking, multiple));
    }

    /** The worst figure that the load at this tension is greater than (not equal to); empty when none. */
    public Optional<Band> band(BigDecimal tensionNewtons) {
        BigDecimal load = loadNewtons(tensionNewtons);
        if (breakingNewtons.filter(breaking -> load.compareTo(breaking) > 0).isPresent()) {
            return Optional.of(Band.PAST_BREAKING);
        }
        if (proofNewtons.filter(proof -> load.compareTo(proof) > 0).isPresent()) {
            return Optional.of(Band.PAST_PROOF);
        }
        return load.compareTo(allowedNewtons) > 0 ? Optional.of(Band.PAST_WLL) : Optional.empty();
    }

    /** Exact for a divisor of 1 or 2, else to 34 digits. */
    static BigDecimal quotient(BigDecimal newtons, BigDecimal divisor) {
        boolean isExact = divisor.compareTo(BigDecimal.ONE) == 0 || divisor.compareTo(BlockFactor.TWO) == 0;
        return isExact ? newtons.divide(divisor) : newtons.divide(divisor, Angle.DIGITS);
    }
}
