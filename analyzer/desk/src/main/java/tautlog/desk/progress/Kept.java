package tautlog.desk.progress;

/** What is left of work that was stopped in the middle. */
public enum Kept {
    /** What was read is remembered. */
    READ_SO_FAR("Stopped. What was read so far is kept: give the same command again, it goes on from there."),
    /** Nothing is. */
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
