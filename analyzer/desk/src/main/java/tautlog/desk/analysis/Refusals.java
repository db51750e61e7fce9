package tautlog.desk.analysis;

import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import tautlog.config.ConfigException;
import tautlog.config.Problem;
import tautlog.desk.report.LeftOut;
import tautlog.recording.LostOuting;
import tautlog.recording.RecordingException;

/** Why a recording or an outing cannot be read, in words; every message begins with the file. */
public final class Refusals {
    /** Chosen: enough to see what is the matter; a rig of a newer program may have very many. */
    private static final int PROBLEMS = 3;

    private Refusals() {}

    /** @param unusable one or more */
    public static RecordingException all(List<RecordingException> unusable) {
        if (unusable.size() == 1) {
            return unusable.get(0);
        }
        List<String> messages =
                unusable.stream().map(e -> String.valueOf(e.getMessage())).toList();
        return new RecordingException(String.join("\n", messages), unusable.get(0));
    }

    /** In one line: nobody can mend the rig that is stored. */
    public static RecordingException rig(Path file, ConfigException e) {
        List<Problem> problems = e.problems();
        String first = problems.stream().limit(PROBLEMS).map(Refusals::problem).collect(Collectors.joining("; "));
        String more = problems.size() > PROBLEMS ? "; and " + (problems.size() - PROBLEMS) + " more" : "";
        return new RecordingException(
                file + ": the rig stored in it cannot be read (" + first + more
                        + "). `tautlog report --rig rig.toml` reads it with another one.",
                e);
    }

    private static String problem(Problem problem) {
        return "line " + problem.line() + ": " + (problem.key().isEmpty() ? "" : problem.key() + ": ")
                + problem.found();
    }

    public static RecordingException thinned(Path file) {
        return new RecordingException(file + ": its readings were thinned because the disk was nearly full: what"
                + " another rig, hookup or calibration makes of them cannot be worked out any more");
    }

    public static LeftOut.OfRecording recording(Path file, RecordingException e) {
        return new LeftOut.OfRecording(file.toString(), reason(file, e));
    }

    /** @param index 0 for the file's first outing */
    public static LeftOut.OfOuting outing(Path file, int index, long samples, RecordingException e) {
        String reason = without("outing " + (index + 1) + ": ", reason(file, e));
        String clause = reason.endsWith(".") ? reason.substring(0, reason.length() - 1) : reason;
        return new LeftOut.OfOuting(file.toString(), index + 1, clause, OptionalLong.of(samples));
    }

    /** One that the file itself says it lacks, or whose start is damaged: a better copy may have it. */
    public static LeftOut.OfOuting lost(Path file, LostOuting lost) {
        return new LeftOut.OfOuting(
                file.toString(),
                lost.index() + 1,
                lost.reason() + ". Copy the recording again from the board if it is still there",
                lost.samples());
    }

    private static String reason(Path file, RecordingException e) {
        return without(file + ": ", String.valueOf(e.getMessage()));
    }

    private static String without(String prefix, String message) {
        return message.startsWith(prefix) ? message.substring(prefix.length()) : message;
    }
}
