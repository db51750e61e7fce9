package tautlog.desk.calibration;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonParser;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tautlog.calibration.CellCalibration;
import tautlog.config.ConfigException;
import tautlog.desk.page.HtmlPage;

/** Tables as nobody should write them: either problems are told, or what comes out can be read back. */
class TornTableTest {
    private static final String TABLE = "load,unit,counts,direction,run,time\n"
            + "0,kN,4001.5,up,1,2026-04-30T09:00:00Z\n10,kN,24003,up,1,\n20,kN,43998,up,1,\n30,kN,64004,up,1,\n"
            + "0,kN,62000,shunt,1,\n20,kN,44009,down,1,\n10,kN,24008,down,1,\n0,kN,4003,down,1,\n";
    private static final String PIECES = "0123456789.,;-+eE\"#\n\t kNlbgfupdown\u0000\u00e9\uFEFF";

    @Test
    void isEitherRefusedOrReadBack() throws Exception {
        Random random = new Random(5);
        int fitted = 0;
        for (int i = 0; i < 2_500; i++) {
            String torn = torn(random);
            try {
                CalibrationStudy study =
                        CalibrationStudy.of(ReadingsTable.parse("t.csv", torn), CalibrationRequest.PLAIN);
                mustBeReadBack(study);
                fitted++;
            } catch (ConfigException told) {
                assertFalse(told.problems().isEmpty());
            }
        }
        assertTrue(fitted > 100, "some tears must leave a table to fit, were " + fitted);
    }

    private static String torn(Random random) {
        StringBuilder text = new StringBuilder(TABLE);
        for (int tears = 1 + random.nextInt(3); tears > 0; tears--) {
            int at = random.nextInt(text.length());
            switch (random.nextInt(3)) {
                case 0 -> text.setCharAt(at, PIECES.charAt(random.nextInt(PIECES.length())));
                case 1 -> text.insert(at, PIECES.charAt(random.nextInt(PIECES.length())));
                default -> text.delete(at, Math.min(text.length(), at + 1 + random.nextInt(12)));
            }
        }
        return text.toString();
    }

    private static void mustBeReadBack(CalibrationStudy study) throws ConfigException {
        CellCalibration read = CellCalibration.parse("calibration.toml", CalibrationToml.render(study));
        assertEquals(study.quality(), read.quality().orElseThrow());
        assertTrue(JsonParser.parseString(CalibrationJson.render(study)).isJsonObject());
        var unit = CalibrationPage.unit(study);
        String page = HtmlPage.render(CalibrationPage.of(study, unit, CalibrationDrawings.of(study, unit)));
        assertFalse(page.contains("NaN"), "a figure that is not known is not drawn and not written");
        assertFalse(List.of("Infinity").stream().anyMatch(page::contains));
    }
}
