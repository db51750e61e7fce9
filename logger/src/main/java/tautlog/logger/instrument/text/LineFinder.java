package tautlog.logger.instrument.text;

import tautlog.logger.config.TextForm.LineEnd;

/** Cuts bytes into lines. What came before the first line end was begun unheard, so it is no line. */
final class LineFinder {
    private static final byte CR = '\r';
    private static final byte LF = '\n';

    /** Is told of each line that is not empty. */
    interface Sink {
        /** Text that is valid during the call. */
        void line(LineText text);

        /** A line had more than {@link LineText#LONGEST} characters. */
        void tooLong();
    }

    private final LineEnd lineEnd;
    private final LineText text = new LineText();
    private boolean hasHeardEnd;
    private boolean isTooLong;

    LineFinder(LineEnd lineEnd) {
        this.lineEnd = lineEnd;
    }

    /** The line was opened anew. */
    void reset() {
        hasHeardEnd = false;
        clear();
    }

    private void clear() {
        text.clear();
        isTooLong = false;
    }

    void feed(byte[] bytes, int n, Sink sink) {
        for (int i = 0; i < n; i++) {
            byte next = bytes[i];
            if (ends(next)) {
                end(sink);
            } else if (!text.append(next)) {
                isTooLong = true;
            }
        }
    }

    private boolean ends(byte next) {
        if (lineEnd == LineEnd.CRLF) {
            return next == LF && text.removeLast(CR);
        }
        return next == (lineEnd == LineEnd.CR ? CR : LF);
    }

    private void end(Sink sink) {
        if (hasHeardEnd && isTooLong) {
            sink.tooLong();
        } else if (hasHeardEnd && text.length() > 0) {
            sink.line(text);
        }
        hasHeardEnd = true;
        clear();
    }
}
