package tautlog.desk.gear;

/** Where a piece of gear stands; none of them says that it is sound. */
public enum Standing {
    /** An overload, or a person's word, that no inspection answers. */
    OUT_OF_SERVICE("out-of-service"),
    /** A competent person said to scrap it. */
    SCRAP("scrap"),
    /** It may have been overloaded, by no reading for sure. */
    INSPECT("inspect"),
    /** Taken away for good. */
    RETIRED("retired"),
    /** Nothing that was recorded or written takes it out. */
    NOTHING_KNOWN_AGAINST_IT("nothing-known-against-it");

    private final String word;

    Standing(String word) {
        this.word = word;
    }

    /** As in JSON. */
    public String word() {
        return word;
    }

    /** Whether nobody may use it. */
    public boolean isOut() {
        return this == OUT_OF_SERVICE || this == SCRAP;
    }
}
