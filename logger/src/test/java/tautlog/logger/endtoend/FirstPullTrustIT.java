package tautlog.logger.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static tautlog.logger.endtoend.Reported.at;
import static tautlog.logger.endtoend.Reported.flag;
import static tautlog.logger.endtoend.Reported.number;
import static tautlog.logger.endtoend.Reported.only;
import static tautlog.logger.endtoend.Reported.text;

import com.google.gson.JsonObject;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** How far the figures of {@link FirstPull} can be trusted: every count as sent, every loss told, live as later. */
class FirstPullTrustIT {
    private static FirstPull run;
    private static JsonObject trust;

    @BeforeAll
    static void recordAndReport() throws Exception {
        run = FirstPull.recorded();
        trust = run.report.getAsJsonObject("trust");
    }

    @Test
    void everyCountIsStoredBitForBit() throws Exception {
        List<String> lines =
                run.programs.desk("export", "recordings", "--csv", "-").lines().toList();
        List<String> header = Arrays.asList(lines.get(0).split(","));
        int number = header.indexOf("number");
        int counts = header.indexOf("counts");
        List<String> expected = new ArrayList<>();
        for (int k = 0; k < FirstPull.SAMPLES; k++) {
            if (run.instrument.arrived()[k]) {
                expected.add((IndependentInstrument.FIRST_NUMBER + k) + ":" + run.drawing.counts[k]);
            }
        }
        List<String> stored = lines.stream()
                .skip(1)
                .map(row -> row.split(","))
                .map(cells -> cells[number] + ":" + cells[counts])
                .toList();
        assertEquals(expected, stored);
    }

    @Test
    void everyLostOrRejectedFrameIsCounted() {
        IndependentInstrument sent = run.instrument;
        int rejected = sent.spoiledFrames + sent.cutFrames + sent.garbagePieces;
        assertEquals(rejected, trust.get("rejected_frames").getAsInt());
        int byKind = trust.getAsJsonObject("rejected").entrySet().stream()
                .mapToInt(e -> e.getValue().getAsInt())
                .sum();
        assertEquals(rejected, byKind);
        int lost = sent.lostFrames + sent.spoiledFrames + sent.cutFrames;
        assertEquals(lost, trust.get("lost_frames").getAsInt(), "lost frames include the rejected ones");
        assertEquals(sent.repeatedFrames, trust.get("repeated_frames").getAsInt());
        assertEquals(0, trust.get("held_frames").getAsInt());
        assertEquals(3, trust.get("lost_by_instrument").getAsInt());
    }

    @Test
    void everyGapIsCounted() {
        // a jump each for: the overload's gap, the pull's gap, the spoiled frame, the cut frame, the long gap
        assertEquals(5, trust.get("gaps").getAsInt());
        number((50 + 300 + 25 + 25 + 1_000) / 500.0, trust, "gap_s");
    }

    @Test
    void whatWasFoundLiveIsWhatTheReportFinds() {
        flag(true, trust, "live_findings_agree");
    }

    @Test
    void theChainIsWholeAndItsLastLinkIsPrinted() throws Exception {
        flag(true, trust, "chain_intact");
        assertEquals(64, trust.get("last_link").getAsString().length());
        run.programs.desk("verify", "recordings");
    }

    @Test
    void saysWhatItReadAndUnderWhichHookup() {
        JsonObject recording = only(run.report, "recordings");
        text("drawn-winch", recording, "winch");
        number(500, recording, "rate_hz");
        int sent = 0;
        for (boolean there : run.instrument.arrived()) {
            sent += there ? 1 : 0;
        }
        assertEquals(sent, recording.get("samples").getAsInt());
        at(0, recording.get("start"));
        JsonObject hookup = only(run.report, "hookups");
        text("straight", hookup, "id");
        number(FirstPull.LIMIT_N, hookup, "limit_n");
        flag(true, hookup, "assumed"); // nobody said which hookup is on
    }
}
