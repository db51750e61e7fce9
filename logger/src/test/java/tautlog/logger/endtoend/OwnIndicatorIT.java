package tautlog.logger.endtoend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import tautlog.logger.LoggerFolder;

/** A weighing indicator on a pseudo-terminal, from its lines of text to the report. */
@Timeout(120)
class OwnIndicatorIT {
    private static final String LOGGER = """
            schema = 1
            rig = "rig.toml"
            recordings = "recordings"
            [instrument]
            kind = "text"
            port = "./port"
            baud = 115200
            format = "sign-value-unit"
            length = 11
            unit = "kN"
            decimals = 2
            rate_hz = 50.0
            full_scale = 60.0
            """;

    @Test
    void reportsThePullsOfAnIndicatorAndWhatItsLineDidToThem() throws Exception {
        // given: slack, 12.34 kN for 3 s, a bound above the 20 kN limit, slack; noise, another unit, a cut line
        BothPrograms programs = BothPrograms.in(Path.of("own-indicator"), LoggerFolder.RIG, LOGGER);
        List<String> lines = new ArrayList<>();
        hold(lines, "+   0.02 kN", 50);
        hold(lines, "+  12.34 kN", 150);
        lines.set(100, "+  12.3\u00b7 kN");
        lines.set(120, "+  12.34 kg");
        lines.set(140, "+  12.34");
        hold(lines, "         OL", 5);
        hold(lines, "+   0.02 kN", 75);

        // when: 50 lines a second
        programs.record(line -> {
            line.send("2.34 kN\r\n".getBytes(StandardCharsets.US_ASCII));
            long due = System.nanoTime();
            StringBuilder second = new StringBuilder();
            for (String text : lines) {
                second.append(text).append("\r\n");
                due += 20_000_000L;
                Thread.sleep(Math.max(0, (due - System.nanoTime()) / 1_000_000));
                line.pass(second.toString().getBytes(StandardCharsets.ISO_8859_1));
                second.setLength(0);
            }
        });

        // then
        JsonObject report = programs.report();
        JsonObject recording = report.getAsJsonArray("recordings").get(0).getAsJsonObject();
        assertEquals(277, recording.get("samples").getAsInt());
        assertEquals(50.0, recording.get("rate_hz").getAsDouble());
        JsonObject pull = report.getAsJsonArray("pulls").get(0).getAsJsonObject();
        assertEquals(1, report.getAsJsonArray("pulls").size());
        assertEquals(60_000, pull.get("peak_n").getAsDouble(), 1e-6, "full scale, exactly");
        assertTrue(report.getAsJsonArray("overloads")
                .get(0)
                .getAsJsonObject()
                .get("at_least")
                .getAsBoolean());
        JsonObject trust = report.getAsJsonObject("trust");
        assertEquals(5, trust.get("end_stop_samples").getAsInt());
        JsonObject rejected = trust.getAsJsonObject("rejected");
        assertEquals(1, rejected.get("UNKNOWN_LINE").getAsInt());
        assertEquals(1, rejected.get("WRONG_UNIT").getAsInt());
        assertEquals(1, rejected.get("WRONG_LENGTH").getAsInt());

        // and the logger said that there is no lamp
        assertTrue(programs.said("run").contains("lamp=none"), programs.said("run"));
        assertTrue(programs.logger("status", "--config", "logger.toml").contains("NO LAMP"));
    }

    private static void hold(List<String> lines, String text, int n) {
        for (int i = 0; i < n; i++) {
            lines.add(text);
        }
    }
}
