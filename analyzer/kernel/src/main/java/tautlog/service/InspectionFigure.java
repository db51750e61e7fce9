package tautlog.service;

import java.util.Arrays;
import java.util.Optional;

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

    public static Optional<InspectionFigure> of(String key) {
        return Arrays.stream(values()).filter(figure -> figure.key.equals(key)).findFirst();
    }
}
