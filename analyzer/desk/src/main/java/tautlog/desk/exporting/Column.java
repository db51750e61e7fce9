package tautlog.desk.exporting;

/**
 * A column of an exported table.
 *
 * @param name ends in the unit, if it has one
 */
public record Column(String name, Type type) {
    /** What its cells hold. */
    public enum Type {
        /** A whole number of up to 32 bits. */
        INT,
        /** A whole number of up to 64 bits. */
        LONG,
        NUMBER,
        /** An instant, to the microsecond. */
        TIME,
        /** One of few words. */
        WORD,
        FLAG
    }
}
