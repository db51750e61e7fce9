package tautlog.rig;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * How a wire rope is made, as far as the rig says.
 *
 * @param diameterMillimetres nominal
 * @param construction {@code 6x36 IWRC}
 */
public record RopeMake(Optional<BigDecimal> diameterMillimetres, Optional<String> construction) {
    /**
     * Wires of the outer strands by class: strands times wires of a strand of the class's name giver (6x19 Seale, 6x36 Warrington Seale).
     * From memory; a rope of the class may have a few more or fewer.
     */
    private static final Map<String, Integer> WIRES =
            Map.of("6x7", 42, "6x19", 114, "6x36", 216, "6x19M", 114, "6x37M", 222, "8x36", 288);

    /** How many wires its outer strands have, nominally; empty when the construction is not written or not known. */
    public OptionalInt outerStrandWires() {
        return wires().map(OptionalInt::of).orElse(OptionalInt.empty());
    }

    /** How many of these one strand has. */
    public OptionalInt wiresOfAStrand() {
        return wires().map(all -> OptionalInt.of(all / strands())).orElse(OptionalInt.empty());
    }

    /** Whether the core is steel; empty when the construction is not written. */
    public Optional<Boolean> hasSteelCore() {
        return construction.map(name -> !name.endsWith(" FC"));
    }

    private Optional<Integer> wires() {
        return strandClass().map(WIRES::get);
    }

    private int strands() {
        return Integer.parseInt(strandClass().orElseThrow().split("x", 2)[0]);
    }

    private Optional<String> strandClass() {
        return construction.map(name -> name.split(" ", 2)[0]).filter(WIRES::containsKey);
    }
}
