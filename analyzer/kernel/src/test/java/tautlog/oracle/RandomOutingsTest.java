package tautlog.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tautlog.detect.Finding;
import tautlog.detect.Finding.ShaftAfterDrop;
import tautlog.detect.Finding.StallEnd;
import tautlog.detect.Finding.TroubleKind;
import tautlog.detect.Known;

/** A comparison is only worth what the outings hold that it compares. */
class RandomOutingsTest {
    private static final int OUTINGS = 400;
    /** Chosen: so rare that it is no matter of chance in {@link #OUTINGS}, so often that a wrong case is seen at once. */
    private static final int OFTEN_ENOUGH = 3;

    private final Map<String, Integer> seen = new HashMap<>();

    @Test
    void holdEveryKindOfFindingInEveryState() {
        // given, when
        for (long seed = 0; seed < OUTINGS; seed++) {
            Oracle.of(RandomOutings.outing(seed)).findings().forEach(this::see);
        }

        // then
        List<String> missing = List.of(
                        "pull",
                        "pull gap",
                        "pull cut by gap",
                        "pull cut by end",
                        "pull with overload",
                        "pull with shock",
                        "held YES",
                        "held NO",
                        "held UNKNOWN",
                        "assumed",
                        "said",
                        "overload",
                        "overload gap",
                        "overload cut by gap",
                        "overload cut by end",
                        "overload at least",
                        "pull at least",
                        "shock at least",
                        "jolt at least",
                        "shock settled",
                        "shock unsettled",
                        "shock gap",
                        "jolt",
                        "slack YES",
                        "slack NO",
                        "slack UNKNOWN",
                        "clutch YES",
                        "clutch NO",
                        "clutch UNKNOWN")
                .stream()
                .filter(this::isRare)
                .toList();
        assertEquals(List.of(), missing);
        for (ShaftAfterDrop state : ShaftAfterDrop.values()) {
            assertEquals(false, isRare("shaft " + state), state.name());
        }
        for (StallEnd state : StallEnd.values()) {
            assertEquals(false, isRare("stall " + state), state.name());
        }
        for (TroubleKind state : TroubleKind.values()) {
            assertEquals(false, isRare("trouble " + state), state.name());
        }
    }

    private boolean isRare(String what) {
        return seen.getOrDefault(what, 0) < OFTEN_ENOUGH;
    }

    private void see(boolean isSo, String what) {
        seen.merge(what, isSo ? 1 : 0, Integer::sum);
    }

    private void see(Finding finding) {
        see(true, finding.kind());
        if (finding instanceof Finding.Pull pull) {
            see(pull.atLeast(), "pull at least");
            see(pull.hasGap(), "pull gap");
            see(pull.cutByGap(), "pull cut by gap");
            see(pull.cutByEnd(), "pull cut by end");
            see(pull.overloads() > 0, "pull with overload");
            see(pull.shocks() > 0, "pull with shock");
            see(true, "held " + pull.held());
            see(true, pull.hookupIsAssumed() ? "assumed" : "said");
        } else if (finding instanceof Finding.Overload overload) {
            see(overload.hasGap(), "overload gap");
            see(overload.cutByGap(), "overload cut by gap");
            see(overload.cutByEnd(), "overload cut by end");
            see(overload.atLeast(), "overload at least");
        } else if (finding instanceof Finding.Shock shock) {
            see(true, shock.settledKnown() ? "shock settled" : "shock unsettled");
            see(shock.atLeast(), "shock at least");
            see(shock.hasGap(), "shock gap");
        } else if (finding instanceof Finding.Jolt jolt) {
            see(jolt.atLeast(), "jolt at least");
        } else if (finding instanceof Finding.Drop drop) {
            see(true, "slack " + drop.staysSlack());
            see(true, "shaft " + drop.shaft());
            see(drop.clutch() != Known.UNKNOWN || drop.brake() == Known.UNKNOWN, "clutch " + drop.clutch());
        } else if (finding instanceof Finding.Stall stall) {
            see(true, "stall " + stall.ended());
        } else if (finding instanceof Finding.Trouble trouble) {
            see(true, "trouble " + trouble.trouble());
        }
    }
}
