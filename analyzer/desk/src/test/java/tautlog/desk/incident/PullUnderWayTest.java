package tautlog.desk.incident;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;

/** A window in which no reading was over the limit, in a pull that went over it before and after. */
class PullUnderWayTest {
    private static final String AT = "2026-05-04T07:00:24Z";
    private static JsonObject incident;
    private static String text;

    @BeforeAll
    static void asksBetweenTheOverloads(@TempDir Path folder) throws Exception {
        Path recording = SampleDay.write(folder, "day.tautlog", 7, 0, SampleDay.rigToml(), Cases.known());
        incident = Cases.json(recording, AT, "--around", "0.5s");
        text = Desk.run("incident", recording, "--at", AT, "--around", "0.5s", "--zone", "UTC")
                .out()
                .replaceAll("\\s+", " ");
    }

    @Test
    void bringsThePullsOverloadsShocksAndJolts() {
        assertEquals(2, incident.getAsJsonArray("overloads").size());
        assertEquals(1, incident.getAsJsonArray("shocks").size());
        assertFalse(incident.getAsJsonArray("jolts").isEmpty());
    }

    @Test
    void saysWhatBrokeAndTakesTheGearOutOfService() {
        JsonObject answer = incident.getAsJsonObject("answer");

        assertTrue(answer.get("what_broke").getAsString().contains("went over the limit"), text);
        assertTrue(answer.get("what_now").getAsString().startsWith("choker: Take it out of service"), text);
        assertEquals(
                "past-proof",
                answer.getAsJsonArray("gear")
                        .get(0)
                        .getAsJsonObject()
                        .get("band")
                        .getAsString());
        assertFalse(text.contains("No reading was over"), text);
        assertTrue(text.contains(answer.get("what_broke").getAsString()), text);
        assertTrue(text.contains("the greatest began at 07:00:26"), text);
    }

    @Test
    void doesNotListTheSubjectAmongWhatWasLikeIt() {
        assertTrue(
                incident.getAsJsonObject("outing").getAsJsonArray("comparable").isEmpty(), text);
    }
}
