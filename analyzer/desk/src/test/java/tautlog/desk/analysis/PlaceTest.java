package tautlog.desk.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.ShortDay;

/** Where a finding was: as the receiver told it last, and unknown when that is more than 10 s ago. */
class PlaceTest {
    @TempDir
    Path folder;

    private Path recording;

    @BeforeEach
    void aPullBesideAFixAndOneLongAfterTheLast() throws IOException {
        recording = ShortDay.write(folder, "placed.tautlog", day -> {
            day.hold(1, 0);
            day.position(481_173_000, -1_224_226_588);
            day.hold(2, 0);
            day.hold(2, 5_000);
            day.hold(10, 0);
            day.hold(2, 5_000);
            day.hold(4, 0);
        });
    }

    @Test
    void standsBesideEachFinding() throws IOException {
        JsonObject report = JsonParser.parseString(
                        Desk.run("report", recording, "--json").out())
                .getAsJsonObject();

        JsonObject near = report.getAsJsonArray("pulls").get(0).getAsJsonObject();
        JsonObject late = report.getAsJsonArray("pulls").get(1).getAsJsonObject();
        JsonObject place = near.getAsJsonObject("position");
        assertEquals(48.1173, place.get("lat_deg").getAsDouble());
        assertEquals(-122.4226588, place.get("lon_deg").getAsDouble());
        assertEquals(2, place.get("age_s").getAsDouble());
        assertTrue(late.get("position").isJsonNull(), "14 s after the last word");
    }

    @Test
    void standsInEachSecondsRow() throws IOException {
        List<String> rows = Desk.run("export", recording, "--csv", "-", "--seconds")
                .out()
                .lines()
                .toList();

        assertTrue(rows.get(0).endsWith(",flags,lat_deg,lon_deg"), rows.get(0));
        assertTrue(rows.get(1).endsWith(",,"), "before the first word: " + rows.get(1));
        assertTrue(rows.get(2).endsWith(",48.1173000,-122.4226588"), rows.get(2));
        assertTrue(rows.get(12).endsWith(",48.1173000,-122.4226588"), rows.get(12));
        assertTrue(rows.get(13).endsWith(",,"), rows.get(13));
    }
}
