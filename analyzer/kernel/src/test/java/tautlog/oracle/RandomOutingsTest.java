package tautlog.oracle;

import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import tautlog.detect.Finding;

/** The comparison is only worth what the random outings hold. */
class RandomOutingsTest {
    @Test
    void holdEveryKindOfFindingInEveryState() {
        // given, when
        Map<String, Integer> seen = new TreeMap<>();
        for (long seed = 0; seed < 400; seed++) {
            Oracle.of(RandomOutings.outing(seed)).findings().forEach(finding -> count(finding, seen));
        }
        System.out.println(seen);
    }

    private static void count(Finding finding, Map<String, Integer> seen) {
        seen.merge(finding.kind(), 1, Integer::sum);
        if (finding instanceof Finding.Pull p) {
            seen.merge(
                    "pull held=" + p.held() + (p.cutByGap() ? " cutByGap" : "") + (p.cutByEnd() ? " end" : "")
                            + (p.hasGap() ? " gap" : ""),
                    1,
                    Integer::sum);
        }
        if (finding instanceof Finding.Overload p) {
            seen.merge(
                    "overload " + (p.cutByGap() ? " cutByGap" : "") + (p.cutByEnd() ? " end" : "")
                            + (p.hasGap() ? " gap" : "") + (p.atLeast() ? " atleast" : ""),
                    1,
                    Integer::sum);
        }
        if (finding instanceof Finding.Shock p) {
            seen.merge("shock " + (p.settledKnown() ? " known" : "") + (p.hasGap() ? " gap" : ""), 1, Integer::sum);
        }
        if (finding instanceof Finding.Drop p) {
            seen.merge("drop slack=" + p.staysSlack(), 1, Integer::sum);
            seen.merge("drop shaft=" + p.shaft(), 1, Integer::sum);
        }
        if (finding instanceof Finding.Stall p) {
            seen.merge("stall " + p.ended(), 1, Integer::sum);
        }
        if (finding instanceof Finding.Trouble p) {
            seen.merge("trouble " + p.trouble(), 1, Integer::sum);
        }
    }
}
