package tautlog.logger.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static tautlog.logger.endtoend.Reported.COUNT_N;
import static tautlog.logger.endtoend.Reported.RATE_HZ;
import static tautlog.logger.endtoend.Reported.at;
import static tautlog.logger.endtoend.Reported.flag;
import static tautlog.logger.endtoend.Reported.force;
import static tautlog.logger.endtoend.Reported.lasts;
import static tautlog.logger.endtoend.Reported.list;
import static tautlog.logger.endtoend.Reported.named;
import static tautlog.logger.endtoend.Reported.number;
import static tautlog.logger.endtoend.Reported.only;
import static tautlog.logger.endtoend.Reported.share;
import static tautlog.logger.endtoend.Reported.span;
import static tautlog.logger.endtoend.Reported.text;
import static tautlog.logger.endtoend.Reported.unknown;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * The main job from outside: an independent instrument writes to a pseudo-terminal, {@code tautlogd run} records it,
 * {@code tautlog report} reads it back. What is expected is read off the drawing ({@link FirstPull}) with the definitions of
 * {@code analyzer/FINDINGS.md}, never computed by the programs' own code. Tolerances: times ±1 sample (2 ms), forces
 * ±1 count (0.01 N).
 */
class FirstPullIT {
    private static FirstPull run;
    private static Drawing line;
    private static boolean[] arrived;

    @BeforeAll
    static void recordAndReport() throws Exception {
        run = FirstPull.recorded();
        line = run.drawing;
        arrived = run.instrument.arrived();
    }

    @Test
    void findsThePulls() {
        JsonArray pulls = list(run.report, "pulls", 5);
        int[][] spans = run.pulls();
        int[] overloads = {1, 0, 0, 0, 1};
        int[] shocks = {1, 0, 0, 0, 0};
        boolean[] held = {false, false, true, true, false};
        for (int i = 0; i < spans.length; i++) {
            JsonObject pull = pulls.get(i).getAsJsonObject();
            pull(pull, spans[i][0], spans[i][1]);
            assertEquals(overloads[i], pull.get("overloads").getAsInt());
            assertEquals(shocks[i], pull.get("shocks").getAsInt());
            flag(held[i], pull, "held");
            flag(i == 0, pull, "has_gap");
            flag(i == 2, pull, "cut_by_gap");
            flag(i == 4, pull, "cut_by_end");
        }
    }

    private static void pull(JsonObject pull, int from, int to) {
        span(from, to, pull);
        lasts(to - from + 1, pull, "duration_s");
        int peak = Integer.MIN_VALUE;
        long sum = 0;
        int samples = 0;
        for (int k = from; k <= to; k++) {
            if (arrived[k]) {
                peak = Math.max(peak, line.counts[k]);
                sum += line.counts[k];
                samples++;
            }
        }
        force(peak, pull, "peak_n");
        force((double) sum / samples, pull, "mean_n");
        assertEquals(sum / 100.0 / RATE_HZ, pull.get("impulse_ns").getAsDouble(), COUNT_N * (to - from + 1) / RATE_HZ);
        number(FirstPull.LIMIT_N, pull, "limit_n");
        share(peak, FirstPull.LIMIT_N, pull);
        text("straight", pull, "hookup");
    }

    @Test
    void findsTheOverloadWithAGapInItsMiddle() {
        JsonObject overload = list(run.report, "overloads", 2).get(0).getAsJsonObject();
        int from = line.firstAbove(9_000, FirstPull.LIMIT_N);
        int to = line.lastAbove(12_001, FirstPull.LIMIT_N);
        span(from, to, overload);
        lasts(to - from + 1 - 50, overload, "above_s"); // 50 samples are missing inside
        force(line.greatest(from, to), overload, "peak_n");
        share(line.greatest(from, to), FirstPull.LIMIT_N, overload);
        number(FirstPull.LIMIT_N, overload, "limit_n");
        text("past-wll", overload, "band");
        text("choker", overload, "governing");
        flag(true, overload, "has_gap");
        flag(false, overload, "at_least");
        flag(false, overload, "cut_by_gap");
        flag(false, overload, "cut_by_end");
    }

    @Test
    void findsTheOverloadBeyondTheConvertersEnd() {
        JsonObject overload = list(run.report, "overloads", 2).get(1).getAsJsonObject();
        int from = line.firstAbove(47_500, FirstPull.LIMIT_N);
        int to = line.lastAbove(50_501, FirstPull.LIMIT_N);
        span(from, to, overload);
        lasts(to - from + 1, overload, "above_s");
        force(IndependentInstrument.FULL_SCALE, overload, "peak_n");
        share(IndependentInstrument.FULL_SCALE, FirstPull.LIMIT_N, overload);
        number(FirstPull.LIMIT_N, overload, "limit_n");
        text("past-proof", overload, "band");
        text("choker", overload, "governing");
        flag(true, overload, "at_least");
        flag(false, overload, "has_gap");
        flag(false, overload, "cut_by_gap");
        flag(false, overload, "cut_by_end");
    }

    @Test
    void saysWhatEachItemCarriedInTheOverload() {
        JsonArray items =
                list(run.report, "overloads", 2).get(1).getAsJsonObject().getAsJsonArray("items");
        JsonObject choker = named(items, "gear", "choker");
        force(IndependentInstrument.FULL_SCALE, choker, "load_n");
        number(12_000, choker, "allowed_n");
        number(24_000, choker, "proof_n");
        number(48_000, choker, "breaking_n");
        share(IndependentInstrument.FULL_SCALE, 12_000, choker);
        JsonObject rope = named(items, "gear", "rope");
        force(IndependentInstrument.FULL_SCALE, rope, "load_n");
        number(32_000, rope, "allowed_n"); // marked 40 kN, termination 0.8
        share(IndependentInstrument.FULL_SCALE, 32_000, rope);
        unknown(rope, "proof_n"); // none is published for the winch's line
    }

    @Test
    void findsTheShock() {
        JsonObject shock = only(run.report, "shocks");
        at(2_510, shock.get("at"));
        lasts(2_501, shock, "slack_s"); // samples 0 to 2,500; the next has 1,000 N
        lasts(10, shock, "rise_s");
        int peak = line.counts[2_510];
        force(peak, shock, "peak_n");
        force(400_000, shock, "settled_n"); // the median of 4,000 N and its dither
        // one count in either force
        assertEquals(peak / 400_000.0, shock.get("factor").getAsDouble(), 3.5 * COUNT_N / 4_000);
        // the same rise of 10 samples as a quarter of a sine: half a sample is a twentieth of it
        assertEquals(
                peak / 100.0 / Math.cos(Math.PI / 40),
                shock.get("peak_if_half_sine_n").getAsDouble(),
                COUNT_N / Math.cos(Math.PI / 40));
        assertEquals(
                (peak - line.counts[2_500]) / 100.0 / (10 / RATE_HZ),
                shock.get("rise_n_per_s").getAsDouble(),
                2 * COUNT_N / (10 / RATE_HZ));
        share(peak, FirstPull.LIMIT_N, shock);
        flag(true, shock, "resolved");
        flag(false, shock, "has_gap");
    }

    @Test
    void findsTheJolt() {
        JsonObject jolt = only(run.report, "jolts");
        int least = line.least(7_404, 7_503);
        int start = line.latestWith(least, 7_503);
        int peak = line.counts[7_504];
        at(start, jolt.get("start"));
        at(7_504, jolt.get("at"));
        force(peak, jolt, "peak_n");
        force(peak - least, jolt, "rise_n");
        lasts(7_504 - start, jolt, "rise_s");
        share(peak, FirstPull.LIMIT_N, jolt);
    }

    @Test
    void findsTheDrop() {
        JsonObject drop = only(run.report, "drops");
        int greatest = line.greatest(12_929, 13_003); // the 75 samples before the first at a fifth
        int start = line.latestWith(greatest, 13_003);
        at(start, drop.get("start"));
        force(greatest, drop, "before_n");
        force(line.least(13_004, 13_004 + 75), drop, "after_n");
        lasts(13_004 - start, drop, "fall_s");
        flag(true, drop, "stays_slack");
        text("ran-up", drop, "shaft");
        unknown(drop, "clutch"); // the instrument does not tell
        unknown(drop, "brake");
    }

    @Test
    void findsTheStall() {
        // 300 rpm from 45.05 s: at 45.1 s one or two of six pulse intervals are long (about 430 rpm), at 45.2 s four
        // (about 345 rpm, below 0.7 * 540 = 378); back at 540 rpm from 46.05 s: at 46.2 s all six are short
        JsonObject stall = only(run.report, "stalls");
        span(22_600, 23_100, stall);
        text("recovered", stall, "ended");
        // a revolution is 111,111 or 200,000 ticks long; both its ends are rounded to whole ticks
        assertEquals(540, stall.get("before_rpm").getAsDouble(), 540 / 111_111.0);
        assertEquals(300, stall.get("least_rpm").getAsDouble(), 300 / 200_000.0);
        force(line.counts[22_600], stall, "tension_n");
    }

    @Test
    void namesTheTroubleOfTheSensor() {
        JsonArray trouble = list(run.report, "trouble", 2);
        span(44_999, 46_000, named(trouble, "kind", "gap"));
        JsonObject endStop = named(trouble, "kind", "end-stop");
        int newtons = IndependentInstrument.FULL_SCALE / Drawing.COUNTS_PER_NEWTON;
        int first = line.firstAtOrAbove(49_000, newtons);
        int last = line.lastAtOrAbove(50_000, newtons);
        span(first, last, endStop);
        assertEquals(
                last - first + 1,
                run.report.getAsJsonObject("trust").get("end_stop_samples").getAsInt());
    }
}
