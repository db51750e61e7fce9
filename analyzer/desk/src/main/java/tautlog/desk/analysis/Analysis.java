package tautlog.desk.analysis;

import java.util.ArrayList;
import java.util.List;
import tautlog.desk.report.Report;
import tautlog.recording.RecordingException;

/**
 * The whole way from recordings to a report.
 *
 * <ol>
 *   <li>{@link History}: which outings there are, each once, in the order of time
 *   <li>{@link OutingPass}: the detectors over each outing, with the rig and hookups that the {@link Question} asks for
 *   <li>{@link CountLookup}: what single samples were, where a figure needs them
 *   <li>{@link tautlog.desk.report.Derivation}: times and newtons
 *   <li>{@link ReportAssembly}: all outings together, hours added up, what can be trusted
 * </ol>
 */
public final class Analysis {
    private final History history;
    private final List<Study> studies;
    private final Report report;

    private Analysis(History history, List<Study> studies, Report report) {
        this.history = history;
        this.studies = studies;
        this.report = report;
    }

    /**
     * Reads all outings of {@code history} under {@code question}.
     *
     * @throws RecordingException if a recording cannot be read
     * @throws QuestionException if the question names what is not there
     */
    public static Analysis of(History history, Question question) throws RecordingException, QuestionException {
        List<Study> studies = new ArrayList<>();
        for (History.Member member : history.members()) {
            studies.add(new OutingPass(member, studies.size() + 1, question).study());
        }
        Report report = new ReportAssembly(history, question, studies).report();
        return new Analysis(history, List.copyOf(studies), report);
    }

    public Report report() {
        return report;
    }

    /** One for each outing, in the order of time. */
    public List<Study> studies() {
        return studies;
    }

    public History history() {
        return history;
    }
}
