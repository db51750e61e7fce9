package tautlog.desk.cli;

import java.io.PrintWriter;
import tautlog.desk.analysis.Analysis;
import tautlog.desk.analysis.History;
import tautlog.desk.analysis.Question;
import tautlog.desk.analysis.QuestionException;
import tautlog.desk.page.Ink;
import tautlog.desk.progress.Kept;
import tautlog.desk.progress.Progress;
import tautlog.desk.progress.WhenStopped;
import tautlog.recording.RecordingException;

/** Long work that says so when it is stopped; an analysis tells how far it is, too. */
final class Watched {
    private Watched() {}

    static Analysis analysis(History history, Question question, Ink ink, PrintWriter err)
            throws RecordingException, QuestionException {
        Progress progress = ProgressLine.of(ink, err);
        WhenStopped stopped = WhenStopped.does(() -> progress.stopped(Kept.NOTHING));
        try {
            return Analysis.of(history, question, progress);
        } finally {
            stopped.workIsOver();
        }
    }

    /** Says {@code kept} when the program is told to stop before the work is over. */
    static WhenStopped saying(Kept kept, PrintWriter err) {
        return WhenStopped.does(() -> say(kept, err));
    }

    static void say(Kept kept, PrintWriter err) {
        err.println(kept.sentence());
        err.flush();
    }
}
