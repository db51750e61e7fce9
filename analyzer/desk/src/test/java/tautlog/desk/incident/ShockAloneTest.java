package tautlog.desk.incident;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.ShortDay;

/** A peak of one sample out of the slack, in no pull: how high it truly was is not known. */
class ShockAloneTest {
    @Test
    void isNeverSaidToHaveKeptTheLimit(@TempDir Path folder) throws Exception {
        Path recording = ShortDay.write(folder, "day.tautlog", day -> {
            day.hold(2, 0);
            day.one(12_000);
            day.hold(3, 0);
        });

        JsonObject incident = Cases.json(recording, "2026-05-04T07:00:02Z");

        JsonObject answer = incident.getAsJsonObject("answer");
        assertEquals(1, incident.getAsJsonArray("shocks").size());
        assertTrue(incident.getAsJsonArray("pulls").isEmpty());
        assertTrue(answer.get("what_broke").getAsString().endsWith("Whether the true pull was is not known."));
        assertFalse(answer.get("how_sure").getAsString().contains("between"));
        assertTrue(answer.get("by_how_much").getAsString().contains("12.0 kN"));
    }
}
