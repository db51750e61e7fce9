package tautlog.desk.page;

import java.util.Map;
import java.util.stream.Collectors;
import tautlog.desk.report.Report;

/** What was lost between instrument and logger, in words. The kinds: {@code firmware-notes/wire.md}, "Reading it". */
final class RejectedWords {
    private static final Map<String, String> KINDS = Map.of(
            "TOO_LONG", "longer than any frame, its end was lost",
            "BAD_COBS", "bytes lost on the way",
            "TOO_SHORT", "a scrap of a frame",
            "BAD_CRC", "bytes changed or lost on the way",
            "UNKNOWN_KIND", "of a kind that the logger does not know",
            "BAD_LENGTH", "of another length than its kind has",
            "UNSUPPORTED_VERSION", "from an instrument of another version",
            "BAD_VALUE", "with a value out of its range",
            "TWO_INSTRUMENTS", "left out because two instruments spoke on one line",
            "SHAFT_SAME_ID", "left out because the shaft's instrument has the id of the other");

    private RejectedWords() {}

    static String of(Report.Trust trust) {
        String lost = Screen.counted(trust.lostFrames(), "frame") + " lost on the line, "
                + Screen.counted(trust.lostByInstrument(), "reading") + " lost by the instrument itself.";
        return trust.rejectedFrames() == 0
                ? lost
                : lost + " " + Screen.counted(trust.rejectedFrames(), "frame") + " came damaged and "
                        + (trust.rejectedFrames() == 1 ? "was" : "were") + " rejected (" + kinds(trust.rejected())
                        + "): they are among those lost on the line, not beside them. Many of them: look at plug, cable"
                        + " and what disturbs it.";
    }

    private static String kinds(Map<String, Long> rejected) {
        return rejected.entrySet().stream()
                .map(kind -> kind.getValue() + " " + kind.getKey() + word(kind.getKey()))
                .collect(Collectors.joining("; "));
    }

    private static String word(String kind) {
        return KINDS.containsKey(kind) ? ", " + KINDS.get(kind) : "";
    }
}
