package tautlog.desk.analysis;

import java.util.ArrayList;
import java.util.List;
import tautlog.desk.progress.Progress;
import tautlog.desk.progress.Steps;
import tautlog.desk.report.LeftOut;
import tautlog.desk.report.Report;
import tautlog.recording.RecordingException;
import tautlog.recording.Verification;

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
    private final ChainCheck chain;
    private final Report report;

    private Analysis(History history, List<Study> studies, ChainCheck chain, Report report) {
        this.history = history;
        this.studies = studies;
        this.chain = chain;
        this.report = report;
    }

    /**
     * Reads all outings of {@code history} under {@code question}; one that cannot be read is left out and named.
     *
     * @throws RecordingException if none can be read
     * @throws QuestionException if the question names what is not there
     */
    public static Analysis of(History history, Question question) throws RecordingException, QuestionException {
        return of(history, history.members(), question, Progress.SILENT);
    }

    /** The same; {@code progress} is told of outings, by their samples, then of files whose chain is checked, by their bytes. */
    public static Analysis of(History history, Question question, Progress progress)
            throws RecordingException, QuestionException {
        return of(history, history.members(), question, progress);
    }

    /**
     * Reads some outings of {@code history}, as if it held no others: their places are counted among them.
     *
     * @param members of {@code history}, in its order
     * @throws RecordingException if none can be read
     * @throws QuestionException if the question names what is not there
     */
    public static Analysis of(History history, List<History.Member> members, Question question)
            throws RecordingException, QuestionException {
        return of(history, members, question, Progress.SILENT);
    }

    private static Analysis of(History history, List<History.Member> members, Question question, Progress progress)
            throws RecordingException, QuestionException {
        Steps steps = Steps.of("outings", members, History.Member::samples, progress);
        List<Study> studies = new ArrayList<>();
        List<RecordingException> failures = new ArrayList<>();
        List<LeftOut.OfOuting> outings = new ArrayList<>(history.leftOut().outings());
        for (int i = 0; i < members.size(); i++) {
            History.Member member = members.get(i);
            try {
                studies.add(new OutingPass(member, studies.size() + 1, question).study());
            } catch (RecordingException e) {
                failures.add(e);
                outings.add(Refusals.outing(member.file(), member.index(), member.samples(), e));
            }
            steps.done(i);
        }
        if (studies.isEmpty() && !failures.isEmpty()) {
            throw failures.get(0);
        }
        LeftOut leftOut = new LeftOut(history.leftOut().recordings(), outings).with(damaged(studies));
        ChainCheck chain = ChainCheck.of(studies, progress);
        Report report = new ReportAssembly(history, question, studies, leftOut, chain).report();
        return new Analysis(history, List.copyOf(studies), chain, report);
    }

    private static List<LeftOut.OfBlock> damaged(List<Study> studies) {
        return studies.stream()
                .flatMap(study -> study.damages().stream()
                        .map(damage -> new LeftOut.OfBlock(study.member().file().toString(), damage.summary())))
                .toList();
    }

    public Report report() {
        return report;
    }

    /** One for each outing, in the order of time. */
    public List<Study> studies() {
        return studies;
    }

    /** What the recording that holds {@code study} is worth as evidence. */
    public Verification verification(Study study) {
        Verification found = chain.found().get(study.member().recording().file());
        if (found == null) {
            throw new IllegalStateException(
                    "not a study of this analysis: " + study.member().file());
        }
        return found;
    }

    public History history() {
        return history;
    }
}
