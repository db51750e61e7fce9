package tautlog.logger.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static tautlog.logger.endtoend.Reported.RATE_HZ;
import static tautlog.logger.endtoend.Reported.SAMPLE_S;
import static tautlog.logger.endtoend.Reported.unknown;

import com.google.gson.JsonObject;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The meters of {@link FirstPull}, each span of theirs to ±1 sample. */
class FirstPullHoursIT {
    private static FirstPull run;
    private static JsonObject hours;

    @BeforeAll
    static void recordAndReport() throws Exception {
        run = FirstPull.recorded();
        hours = run.report.getAsJsonObject("hours");
    }

    @Test
    void addsUpThePulls() {
        int[][] pulls = run.pulls();
        meter(samples(pulls, 0, 1, 2, 3, 4), 5, "pull_h");
        // The shaft stands from 64 s to 86 s, the third and the fourth pull lie within: each number of theirs has a
        // reading that speaks for it, those of the other pulls likewise.
        meter(samples(pulls, 2, 3), 2, "held_h");
        meter(samples(pulls, 0, 1, 4), 3, "winching_h");
    }

    private static int samples(int[][] pulls, int... which) {
        int sum = 0;
        for (int i : which) {
            sum += pulls[i][1] - pulls[i][0] + 1;
        }
        return sum;
    }

    private static void meter(double samples, int spans, String key) {
        assertEquals(samples / RATE_HZ / 3_600, hours.get(key).getAsDouble(), spans * SAMPLE_S / 3_600, key);
    }

    /**
     * Frame by frame, ten a second. 300 rpm are 30 pulses a second: the seventh, which makes a revolution, comes at
     * 0.233 s, so the first reading is that of 0.3 s. The shaft stops at 64 s, right after a pulse at 540 rpm (one each
     * 18.5 ms): 60 / (6 · 0.1 s) = 100 rpm are still possible at 64.1 s, 50 rpm at 64.2 s, so that the reading of 64.1 s
     * is the last above 60 and speaks until 64.2 s. It turns again from 86 s; at 86.1 s no revolution lies behind the
     * stop yet, at 86.2 s one does. The last frame is that of 105 s, and its reading speaks for nothing.
     */
    @Test
    void countsTheShaftsTime() {
        meter(((64.2 - 0.3) + (105.0 - 86.2)) * RATE_HZ, 2, "shaft_h");
    }

    @Test
    void knowsNoJointWithoutItsDriveline() {
        unknown(hours, "joint_h");
    }

    @Test
    void sortsThePullsTimeByShareOfTheLimit() {
        int[] samples = new int[5];
        for (int[] pull : run.pulls()) {
            for (int k = pull[0]; k <= pull[1]; k++) {
                int quarter = (run.drawing.counts[k] - 1) / 300_000; // 0.25 * 12 kN = 3,000 N = 300,000 counts
                samples[Math.min(quarter, 4)] += run.instrument.arrived()[k] ? 1 : 0;
            }
        }
        String[] names = {"to_0.25", "to_0.5", "to_0.75", "to_1", "above_1"};
        JsonObject bands = hours.getAsJsonObject("band_h");
        for (int i = 0; i < names.length; i++) {
            assertEquals(samples[i] / RATE_HZ / 3_600, bands.get(names[i]).getAsDouble(), SAMPLE_S / 3_600, names[i]);
        }
    }

    @Test
    void countsTheFindings() {
        String[] kinds = {"pulls", "overloads", "shocks", "jolts", "drops", "stalls"};
        int[] drawn = {5, 2, 1, 1, 1, 1};
        for (int i = 0; i < kinds.length; i++) {
            assertEquals(drawn[i], hours.get(kinds[i]).getAsInt(), kinds[i]);
        }
    }
}
