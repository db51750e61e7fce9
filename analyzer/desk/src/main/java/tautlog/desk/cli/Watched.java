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

/** An analysis that tells how far it is, and says so when it is stopped. */
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
}
