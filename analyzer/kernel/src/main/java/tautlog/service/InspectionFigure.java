package tautlog.service;

import java.util.Arrays;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tautlog.rig.GearKind;

/** What an inspection counts or measures. */
public enum InspectionFigure {
    BROKEN_WIRES_IN_LAY("broken_wires_in_lay", true, "broken wires in one lay length"),
    BROKEN_WIRES_IN_STRAND("broken_wires_in_strand", true, "broken wires of one strand in one lay length"),
    BROKEN_WIRES_IN_6D("broken_wires_in_6d", true, "broken wires over 6 diameters"),
    BROKEN_WIRES_IN_30D("broken_wires_in_30d", true, "broken wires over 30 diameters"),
    BROKEN_WIRES_AT_END("broken_wires_at_end", true, "broken wires at the termination"),
    DIAMETER_MM("diameter_mm", false, "diameter in mm"),
    LINK_THICKNESS_MM("link_thickness_mm", false, "link thickness at the thinnest point in mm"),
    LENGTH_MM("length_mm", false, "length in mm");

    private final String key;
    private final boolean isCount;
    private final String words;

    InspectionFigure(String key, boolean isCount, String words) {
        this.key = key;
        this.isCount = isCount;
        this.words = words;
    }

    /** As in the ledger. */
    public String key() {
        return key;
    }

    /** Whether it is a whole number. */
    public boolean isCount() {
        return isCount;
    }

    /** For a person. */
    public String words() {
        return words;
    }

    /** Whether gear of such a kind has it; of the kind OTHER nobody knows: it may have any. */
    public boolean fits(GearKind kind) {
        return kind == GearKind.OTHER || kinds().contains(kind);
    }

    /** The kinds that have it, for a person: {@code chain, rope or web}. */
    public String kindWords() {
        String words = kinds().stream().sorted().map(GearKind::word).collect(Collectors.joining(", "));
        return words.replaceFirst(", (?=[a-z]+$)", " or ");
    }

    private Set<GearKind> kinds() {
        return switch (this) {
            case LINK_THICKNESS_MM -> Set.of(GearKind.CHAIN);
            case LENGTH_MM -> Set.of(GearKind.CHAIN, GearKind.ROPE, GearKind.WEB);
            default -> Set.of(GearKind.ROPE);
        };
    }

    public static Optional<InspectionFigure> of(String key) {
        return Arrays.stream(values()).filter(figure -> figure.key.equals(key)).findFirst();
    }
}
