package tautlog.logger.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static tautlog.logger.endtoend.Drawing.BRAKE;
import static tautlog.logger.endtoend.Drawing.BUTTON;
import static tautlog.logger.endtoend.Drawing.CLUTCH;
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

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * What people do at the winch, from outside: an instrument with a selector, a mark button, a clutch and a brake, a
 * {@code tautlogd mark} in the middle of a pull, and a rig that describes drum and joint. As in {@link FirstPullIT}, what is
 * expected is read off the drawing.
 */
class SwitchesIT {
    private static final int SAMPLES = 18_000;
    /** Limits of the three hookups, choker factor 0.75. */
    private static final int STRAIGHT_N = 12_000;

    private static final int THIN_N = 6_000;

    private static final int TO_THIN = 4_000;
    private static final int TO_STOUT = 5_000;
    private static final int PRESSED = 8_000;
    private static final int TOLD_STRAIGHT = 12_000;
    private static final int CLUTCH_OUT = 13_500;
    private static final int LETS_GO = 14_000;

    private static final Drawing LINE = drawing();
    private static JsonObject report;
    private static String answer;

    @BeforeAll
    static void recordAndReport() throws Exception {
        IndependentInstrument instrument = new IndependentInstrument();
        instrument.send(LINE);
        BothPrograms programs = BothPrograms.in(Path.of("switches"), RIG);
        programs.record(line -> {
            line.send(instrument.bytesBefore(TOLD_STRAIGHT));
            answer = programs.logger(
                    "mark", "--config", "logger.toml", "--hookup", "straight", "--note", "the thick choker again");
            line.send(instrument.bytesFrom(TOLD_STRAIGHT));
        });
        report = programs.report();
    }

    private static Drawing drawing() {
        Drawing line = new Drawing(SAMPLES);
        line.hold(0, 2_000, 0);
        line.ramp(2_000, 2_500, 0, 8_000);
        line.hold(2_500, 7_000, 8_000);
        line.ramp(7_000, 7_500, 8_000, 0);
        line.hold(7_500, 10_000, 0);
        line.ramp(10_000, 10_500, 0, 13_000);
        line.hold(10_500, LETS_GO, 13_000); // the limit is 18 kN at first, then 12 kN
        line.set(LETS_GO + 1, 8_000, 4_000, 1_000);
        line.hold(LETS_GO + 4, SAMPLES - 1, 0);
        line.ditherAndClip();
        line.turning(0, SAMPLES, 540);
        line.switched(0, 1, CLUTCH);
        line.switched(TO_THIN, 2, CLUTCH);
        line.switched(TO_STOUT, 3, CLUTCH);
        line.switched(PRESSED, 3, CLUTCH | BUTTON);
        line.switched(PRESSED + 100, 3, CLUTCH);
        line.switched(CLUTCH_OUT, 3, BRAKE);
        return line;
    }

    @Test
    void theSelectorsTurnBeginsAnOverloadAndTheNextTurnEndsIt() {
        JsonObject overload = list(report, "overloads", 2).get(0).getAsJsonObject();
        text("thin", overload, "hookup");
        flag(false, overload, "hookup_assumed");
        number(THIN_N, overload, "limit_n");
        span(TO_THIN, TO_STOUT - 1, overload);
        lasts(TO_STOUT - TO_THIN, overload, "above_s");
        int peak = LINE.greatest(TO_THIN, TO_STOUT - 1);
        force(peak, overload, "peak_n");
        share(peak, THIN_N, overload);
        text("thin-choker", overload, "governing");
        flag(false, overload, "cut_by_gap");
        flag(false, overload, "cut_by_end");
    }

    @Test
    void aMarkChangesTheHookupAtTheSampleThatItAnswers() {
        assertTrue(answer.contains("sample " + (IndependentInstrument.FIRST_NUMBER + TOLD_STRAIGHT)), answer);
        JsonObject overload = list(report, "overloads", 2).get(1).getAsJsonObject();
        text("straight", overload, "hookup");
        flag(false, overload, "hookup_assumed");
        number(STRAIGHT_N, overload, "limit_n");
        int last = LINE.lastAbove(LETS_GO + 2, STRAIGHT_N);
        span(TOLD_STRAIGHT, last, overload);
        lasts(last - TOLD_STRAIGHT + 1, overload, "above_s");
        share(LINE.greatest(TOLD_STRAIGHT, last), STRAIGHT_N, overload);
    }

    @Test
    void theButtonAndTheNoteAreInTheReport() {
        JsonArray marks = list(report, "marks", 2);
        at(PRESSED, named(marks, "note", "").get("at"));
        at(TOLD_STRAIGHT, named(marks, "note", "the thick choker again").get("at"));
    }

    @Test
    void allThreeHookupsAreListedAsSaidBySomebody() {
        JsonArray hookups = list(report, "hookups", 3);
        number(STRAIGHT_N, named(hookups, "id", "straight"), "limit_n");
        number(THIN_N, named(hookups, "id", "thin"), "limit_n");
        number(18_000, named(hookups, "id", "stout"), "limit_n");
        hookups.forEach(hookup -> flag(false, hookup.getAsJsonObject(), "assumed"));
    }

    @Test
    void theDropTellsClutchAndBrake() {
        JsonObject drop = only(report, "drops");
        int greatest = LINE.greatest(LETS_GO + 3 - 75, LETS_GO + 2);
        at(LINE.latestWith(greatest, LETS_GO + 2), drop.get("start"));
        force(greatest, drop, "before_n");
        flag(false, drop, "clutch");
        flag(true, drop, "brake");
        text("kept-turning", drop, "shaft");
        flag(true, drop, "stays_slack");
    }

    /**
     * Ten readings a second of 540 rpm from 0.2 s, when seven pulses, a revolution, are known. Each interval of 50 samples
     * wears by Δt · (M/M_rated)^(10/3) · (n/n_rated) · (max(β, 3°)/β_rated), M from the interval's greatest tension on the
     * fourth layer; with the clutch out it does not. The readings' ticks are rounded to a hundred-thousandth of a
     * revolution.
     */
    @Test
    void theJointWearsWhileTheClutchIsEngaged() {
        double radiusMetres = 0.180 / 2 + 3.5 * 0.011;
        double seconds = 0;
        for (int reading = 100; reading < CLUTCH_OUT; reading += 50) {
            double newtons = Math.max(0, LINE.greatest(reading + 1, reading + 50)) / 100.0;
            double torque = newtons * radiusMetres / (14 * 0.75);
            seconds += 0.1 * Math.pow(torque / 200, 10 / 3.0) * (540 / 1_000.0) * (8 / 5.0);
        }
        JsonObject hours = report.getAsJsonObject("hours");
        assertEquals(seconds / 3_600, hours.get("joint_h").getAsDouble(), 1e-4 * seconds / 3_600);
        // in the interval before the clutch was out, it was so for the last sample: "at most"
        flag(true, hours, "joint_h_is_at_most");
    }

    @Test
    void whatWasFoundLiveIsWhatTheReportFinds() {
        flag(true, report.getAsJsonObject("trust"), "live_findings_agree");
    }

    private static final String RIG = """
            schema = 1
            units = "kN"
            [winch]
            name = "switched-winch"
            rated_pull = "40 kN"
            shaft_rated = { speed_rpm = 1000, torque = "200 N m" }
            drum = { barrel_diameter = "180 mm", layers = 4, ratio = 14.0, efficiency = 0.75 }
            joint = { angle_deg = 8, rated_angle_deg = 5 }
            [cell]
            at = "line"
            [shaft]
            sensor_at = "tractor"
            [[gear]]
            id = "rope"
            kind = "rope"
            diameter = "11 mm"
            wll = "40 kN"
            [[gear]]
            id = "choker"
            kind = "chain"
            wll = "16 kN"
            [[gear]]
            id = "thin-choker"
            kind = "chain"
            wll = "8 kN"
            [[gear]]
            id = "stout-choker"
            kind = "chain"
            wll = "24 kN"
            [[hookup]]
            id = "straight"
            selector = 1
            default = true
            items = [ { gear = "rope" }, { gear = "choker", as = "choker", choke_angle_deg = 130 } ]
            [[hookup]]
            id = "thin"
            selector = 2
            items = [ { gear = "rope" }, { gear = "thin-choker", as = "choker", choke_angle_deg = 130 } ]
            [[hookup]]
            id = "stout"
            selector = 3
            items = [ { gear = "rope" }, { gear = "stout-choker", as = "choker", choke_angle_deg = 130 } ]
            """;
}
