package tautlog.desk.analysis;

/** What was asked does not fit the history; the message says what to ask instead. */
public final class QuestionException extends Exception {
    private static final long serialVersionUID = 1L;

    QuestionException(String message) {
        super(message);
    }
}
