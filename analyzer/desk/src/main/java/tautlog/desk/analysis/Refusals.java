package tautlog.desk.analysis;

import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;
import tautlog.config.ConfigException;
import tautlog.desk.report.LeftOut;
import tautlog.recording.RecordingException;

/** Why a recording or an outing cannot be read, in words; every message begins with the file. */
public final class Refusals {
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

    public static RecordingException rig(Path file, ConfigException e) {
        return new RecordingException(
                file + ": the rig stored in it cannot be read; give one with --rig.\n" + e.getMessage(), e);
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
        return new LeftOut.OfOuting(file.toString(), index + 1, reason(file, e), OptionalLong.of(samples));
    }

    private static String reason(Path file, RecordingException e) {
        String message = String.valueOf(e.getMessage());
        String prefix = file + ": ";
        return message.startsWith(prefix) ? message.substring(prefix.length()) : message;
    }
}
