package tautlog.desk.progress;

/** What is left of work that was stopped in the middle. */
public enum Kept {
    /** What was read is remembered. */
    READ_SO_FAR("Stopped. What was read so far is kept: give the same command again, it goes on from there."),
    /** What was read is remembered in part, and perhaps none of it: the disk is full, or must not be written. */
    NOT_ALL("Stopped. Not all that was read could be kept: give the same command again, it reads what is missing."),
    /** Recordings were to be replaced, one after the other. */
    EACH_WHOLE(
            "Stopped. Every recording is whole, packed or as it was: give the same command again, it goes on from there."),
    /** A table went where nothing can be taken back. */
    PART_OF_TABLE("Stopped. The table is not complete: give the same command again, it begins anew."),
    /** Nothing is, nor was it to be. */
    NOTHING("Stopped. Nothing was changed: give the same command again, it begins anew.");

    private final String sentence;

    Kept(String sentence) {
        this.sentence = sentence;
    }

    /** For a person who wants to go home. */
    public String sentence() {
        return sentence;
    }
}
