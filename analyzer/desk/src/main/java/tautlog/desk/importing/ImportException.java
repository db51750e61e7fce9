package tautlog.desk.importing;

/** Readings cannot become a recording; the message says what was found and what to do. */
public final class ImportException extends Exception {
    private static final long serialVersionUID = 1L;

    private final boolean usage;

    private ImportException(String message, boolean usage) {
        super(message);
        this.usage = usage;
    }

    /** What was asked for is wrong. */
    static ImportException usage(String message) {
        return new ImportException(message, true);
    }

    /** What the file holds is wrong. */
    static ImportException content(String message) {
        return new ImportException(message, false);
    }

    /** True when another command line would help, false when the file itself cannot be used. */
    public boolean isUsage() {
        return usage;
    }
}
