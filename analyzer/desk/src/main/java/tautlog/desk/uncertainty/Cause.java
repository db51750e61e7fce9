package tautlog.desk.uncertainty;

/** What puts a figure in doubt. */
public enum Cause {
    CALIBRATION("calibration"),
    REFERENCE_LOADS("reference loads"),
    ZERO("zero"),
    RESOLUTION("resolution"),
    NOISE("noise"),
    CELL_ANGLE("angle at the cell"),
    FAST_PEAK("sampling of a fast peak");

    private final String word;

    Cause(String word) {
        this.word = word;
    }

    /** As in reports. */
    public String word() {
        return word;
    }
}
