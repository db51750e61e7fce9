package tautlog.desk.use;

import java.util.List;
import tautlog.recording.LostOuting;

/**
 * What a file tells of itself without its readings being read.
 *
 * @param outings that can be read, in the file's order
 * @param lost those that cannot
 */
record FileHead(String winch, String recordingId, List<OutingHead> outings, List<LostOuting> lost) {
    FileHead {
        outings = List.copyOf(outings);
        lost = List.copyOf(lost);
    }
}
