package tautlog.recording.pages;

/** Something in the file is not as in a plain one, which says nothing of whether SQLite can read it. */
public final class NotPlainException extends Exception {
    private static final long serialVersionUID = 1L;

    private NotPlainException(String what) {
        super(what);
    }

    /** @param what is not as it should be where {@code fits} is false */
    public static void require(boolean fits, String what) throws NotPlainException {
        if (!fits) {
            throw new NotPlainException(what);
        }
    }
}
