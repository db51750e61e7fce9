package tautlog.desk.web;

/** A request that is not answered, with the words for who sent it. */
@SuppressWarnings("serial")
final class RefusedException extends Exception {
    private final transient Answer answer;

    RefusedException(int status, String text) {
        super(text);
        answer = Answer.text(status, text);
    }

    RefusedException(int status, String text, String header, String value) {
        super(text);
        answer = Answer.text(status, text).with(header, value);
    }

    Answer answer() {
        return answer;
    }
}
