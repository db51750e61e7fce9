package tautlog.logger.endtoend;

import com.google.gson.JsonObject;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import tautlog.logger.endtoend.IndependentInstrument.Fate;

/**
 * 105 seconds with every kind of finding, a wrapping counter and a bad line, recorded and reported once for all tests about
 * it. The rig: rated pull 40 kN, limit 12 kN (choker marked 16 kN, factor 0.75; proof 24 kN, breaking 48 kN).
 */
final class FirstPull {
    static final int SAMPLES = 52_500;
    static final int LIMIT_N = 12_000;

    private static @Nullable FirstPull recorded;

    final Drawing drawing = drawing();
    final IndependentInstrument instrument = new IndependentInstrument();
    final BothPrograms programs;
    final JsonObject report;

    private FirstPull() throws Exception {
        instrument.send(drawing);
        programs = BothPrograms.in(Path.of("first-pull"), RIG);
        programs.record(line -> line.send(instrument.bytes()));
        report = programs.report();
    }

    static synchronized FirstPull recorded() throws Exception {
        FirstPull run = recorded;
        if (run == null) {
            run = new FirstPull();
            recorded = run;
        }
        return run;
    }

    private static Drawing drawing() {
        Drawing line = new Drawing(SAMPLES);
        tension(line);
        line.turning(0, SAMPLES, 540);
        line.turning(0, 13_000, 300);
        line.turning(13_000, 17_500, 420); // runs up when the load is gone
        line.turning(22_525, 23_025, 300); // pulled down, recovers
        line.turning(32_000, 43_000, 0); // the brake holds
        line.lose(10_000, 10_050); // short, in the middle of the overload
        line.lose(37_500, 37_800); // long, in a pull
        line.lose(45_000, 46_000); // longer than a second, in slack
        line.fates[42_000 / 25] = Fate.CRC_SPOILED;
        line.fates[42_100 / 25] = Fate.CUT_SHORT;
        line.fates[42_200 / 25] = Fate.SENT_TWICE;
        line.fates[42_300 / 25] = Fate.GARBAGE_BEFORE;
        return line;
    }

    private static void tension(Drawing line) {
        line.hold(0, 2_500, 0);
        line.ramp(2_500, 2_510, 0, 10_000); // a slack line snaps tight
        line.ramp(2_510, 2_550, 10_000, 4_000);
        line.hold(2_550, 6_000, 4_000);
        line.ramp(6_000, 6_500, 4_000, 3_000);
        line.hold(6_500, 7_500, 3_000);
        line.ramp(7_500, 7_504, 3_000, 11_500); // the butt meets a stump
        line.ramp(7_504, 7_604, 11_500, 5_000);
        line.hold(7_604, 9_000, 5_000);
        line.ramp(9_000, 9_500, 5_000, 14_000); // past the limit
        line.hold(9_500, 11_500, 14_000);
        line.ramp(11_500, 12_000, 14_000, 10_000);
        line.hold(12_000, 13_000, 10_000);
        line.set(13_001, 7_500, 5_000, 2_500, 500); // a part lets go
        line.hold(13_005, 17_500, 0);
        line.ramp(17_500, 18_000, 0, 5_000);
        line.hold(18_000, 30_000, 5_000);
        line.ramp(30_000, 30_500, 5_000, 0);
        line.hold(30_500, 35_000, 0);
        line.ramp(35_000, 35_500, 0, 5_000);
        line.hold(35_500, 40_000, 5_000);
        line.ramp(40_000, 40_500, 5_000, 0);
        line.hold(40_500, 47_500, 0);
        line.ramp(47_500, 48_500, 0, 20_000);
        line.hold(48_500, 49_000, 20_000);
        line.ramp(49_000, 49_500, 20_000, 26_000); // the converter ends at 25 kN
        line.ramp(49_500, 50_000, 26_000, 13_000);
        line.ramp(50_000, 50_500, 13_000, 5_000);
        line.hold(50_500, SAMPLES - 1, 5_000);
        line.ditherAndClip();
    }

    /** First and last sample of each pull, from the definition: opens at 1,500 N, ends at the last sample with that. */
    int[][] pulls() {
        return new int[][] {
            {2_502, drawing.lastAtOrAbove(13_010, 1_500)}, // the snap climbs 1,000 N a sample
            {drawing.firstAtOrAbove(17_500, 1_500), drawing.lastAtOrAbove(30_501, 1_500)},
            {drawing.firstAtOrAbove(35_000, 1_500), 37_499}, // cut by the long gap
            {37_800, drawing.lastAtOrAbove(40_501, 1_500)}, // and open again behind it
            {drawing.firstAtOrAbove(47_500, 1_500), SAMPLES - 1} // cut by the end
        };
    }

    private static final String RIG = """
            schema = 1
            units = "kN"
            [winch]
            name = "drawn-winch"
            rated_pull = "40 kN"
            [cell]
            at = "line"
            [shaft]
            sensor_at = "tractor"
            [[gear]]
            id = "choker"
            kind = "chain"
            wll = "16 kN"
            [[gear]]
            id = "rope"
            kind = "rope"
            wll = "40 kN"
            [[hookup]]
            id = "straight"
            default = true
            items = [ { gear = "rope" }, { gear = "choker", as = "choker", choke_angle_deg = 130 } ]
            """;
}
