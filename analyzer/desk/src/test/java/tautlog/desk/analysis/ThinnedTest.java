package tautlog.desk.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;
import tautlog.recording.RecordingException;
import tautlog.recording.Thinner;

/** A recording whose readings were thinned tells what it told before, says so, and makes nothing up. */
class ThinnedTest {
    private static final Set<String> TIMES = Set.of("start", "end");

    @TempDir
    Path folder;

    private Path file;

    @BeforeEach
    void record() throws RecordingException {
        file = SampleDay.writeCalm(folder);
    }

    private void thin() throws RecordingException {
        assertEquals(
                1,
                Thinner.thin(file, Long.MAX_VALUE, Long.MAX_VALUE, OptionalLong.of(1_778_000_000_000_000L))
                        .outings());
    }

    private static JsonObject json(int code, Object... arguments) {
        Desk run = Desk.run(arguments);
        assertEquals(code, run.code(), run.err());
        return JsonParser.parseString(run.out()).getAsJsonObject();
    }

    private static String flowing(Desk run) {
        return run.out().replaceAll("\\s+", " ");
    }

    @Test
    void reportsPullsAndHoursAsBeforeAndMarksThemSo() throws IOException {
        // given
        JsonObject whole = json(0, "report", file, "--json");
        assertEquals(2, whole.getAsJsonArray("pulls").size());
        assertFalse(pull(whole, 0).get("from_said_live").getAsBoolean());
        assertEquals(0, trust(whole).getAsJsonArray("thinned").size());

        // when
        thin();
        JsonObject thinned = json(0, "report", file, "--json");

        // then: what was said is what was found
        for (int i = 0; i < 2; i++) {
            assertSameButForDoubt(pull(whole, i), pull(thinned, i));
        }
        JsonObject hours = whole.getAsJsonObject("hours");
        hours.add("joint_h", thinned.getAsJsonObject("hours").get("joint_h"));
        hours.addProperty("joint_h_is_at_most", true);
        assertEquals(hours, thinned.getAsJsonObject("hours"));
        assertTrue(thinned.getAsJsonObject("hours").get("joint_h").isJsonNull());
        assertEquals(whole.getAsJsonArray("hookups"), thinned.getAsJsonArray("hookups"));
        JsonObject mark = thinned.getAsJsonArray("marks").get(0).getAsJsonObject();
        assertNear(whole.getAsJsonArray("marks").get(0).getAsJsonObject().get("at"), mark.get("at"));

        // and nothing stands there that cannot be known
        JsonObject uncertainty = pull(thinned, 0).getAsJsonObject("uncertainty");
        assertTrue(uncertainty.get("low_n").isJsonNull());
        assertTrue(uncertainty.get("high_n").isJsonNull());
        assertTrue(uncertainty.get("leaves_out").toString().contains("thinned"), uncertainty::toString);
        assertEquals(0, trust(thinned).get("gaps").getAsInt());
        assertTrue(trust(thinned).get("live_findings_agree").isJsonNull());
        assertTrue(trust(thinned).get("chain_intact").getAsBoolean());
        assertFalse(trust(thinned).getAsJsonObject("zero").get("proven").getAsBoolean());
        assertEquals(
                "[{\"file\":\"" + file + "\",\"outing\":1,\"samples\":22500}]",
                trust(thinned).getAsJsonArray("thinned").toString());
        assertEquals(
                0,
                thinned.getAsJsonArray("recordings")
                        .get(0)
                        .getAsJsonObject()
                        .get("samples")
                        .getAsInt());
        assertTrue(flowing(Desk.run("report", file)).contains("THINNED: the logger took the raw readings of 1 of 1"));
        assertTrue(Desk.run("report", file, "--csv", "-").out().contains("from_said_live"));
    }

    private static JsonObject pull(JsonObject report, int i) {
        return report.getAsJsonArray("pulls").get(i).getAsJsonObject();
    }

    private static JsonObject trust(JsonObject report) {
        return report.getAsJsonObject("trust");
    }

    private static void assertSameButForDoubt(JsonObject whole, JsonObject thinned) {
        assertTrue(thinned.get("from_said_live").getAsBoolean());
        assertEquals(whole.keySet(), thinned.keySet());
        for (String key : whole.keySet()) {
            if (TIMES.contains(key)) {
                assertNear(whole.get(key), thinned.get(key));
            } else if (!key.endsWith("uncertainty") && !key.equals("from_said_live")) {
                assertEquals(whole.get(key), thinned.get(key), key);
            }
        }
    }

    private static void assertNear(JsonElement time, JsonElement other) {
        Duration off = Duration.between(Instant.parse(time.getAsString()), Instant.parse(other.getAsString()));
        assertTrue(off.abs().compareTo(Duration.ofMillis(1)) <= 0, () -> time + " " + other);
    }

    @Test
    void verifiesAsIntactAndNamesWhatIsGone() throws RecordingException {
        String linkBefore = json(0, "verify", file, "--json")
                .getAsJsonArray("recordings")
                .get(0)
                .getAsJsonObject()
                .get("last_link")
                .getAsString();
        thin();

        Desk text = Desk.run("verify", file);
        JsonObject found = json(0, "verify", file, "--json")
                .getAsJsonArray("recordings")
                .get(0)
                .getAsJsonObject();

        assertEquals(0, text.code());
        assertTrue(text.out().contains(": intact"), text.out());
        assertTrue(text.out().contains("THINNED outing 1, 2026-05-05T16:53:20Z"), text.out());
        JsonArray thinned = found.getAsJsonArray("thinned");
        assertEquals(
                "[{\"outing\":1,\"blocks\":2,\"samples\":22500,\"time\":\"2026-05-05T16:53:20Z\"}]",
                thinned.toString());
        assertEquals(0, found.get("samples").getAsInt());
        assertFalse(linkBefore.equals(found.get("last_link").getAsString()));
    }

    @Test
    void leavesItOutUnderWhatIfRatherThanCallItHarmless() throws RecordingException {
        thin();

        Desk run = Desk.run("report", file, "--hookup", "round-the-corner", "--json");

        assertEquals(3, run.code(), run.out());
        assertTrue(run.err().contains("its readings were thinned"), run.err());
        assertFalse(run.out().contains("\"pull_h\""), run.out());
    }

    @Test
    void exportsItsSecondsAsSaidAndNamesItAsLeftOutOfItsSamples() throws RecordingException {
        String seconds = Desk.run("export", file, "--seconds", "--csv", "-").out();
        thin();

        assertEquals(
                seconds, Desk.run("export", file, "--seconds", "--csv", "-").out());
        Desk samples = Desk.run("export", file, "--csv", "-");
        assertEquals(3, samples.code());
        assertEquals(1, samples.out().lines().count());
        assertTrue(samples.err().contains("its readings were thinned"), samples.err());
    }

    @Test
    void countsTheWholeCopyWhenThereIsOne() throws IOException {
        Path before = Files.createDirectory(folder.resolve("laptop")).resolve("copy.tautlog");
        Files.copy(file, before);
        thin();

        for (List<Path> order : List.of(List.of(file, before), List.of(before, file))) {
            JsonObject report = json(0, "report", order.get(0), order.get(1), "--json");
            assertEquals(2, report.getAsJsonArray("pulls").size());
            assertFalse(pull(report, 0).get("from_said_live").getAsBoolean());
        }
    }

    @Test
    void drawsWhatIsGoneAsUnknown() throws IOException {
        thin();
        Path page = folder.resolve("report.html");

        assertEquals(0, Desk.run("report", file, "--html", page).code());

        assertTrue(Files.readString(page).contains("THINNED"));
    }

    @Test
    void hoursSayThatPullsAreFromTheDay() throws RecordingException {
        thin();

        JsonObject hours = json(0, "hours", file, "--json");

        assertTrue(hours.getAsJsonObject("total").get("from_said_live").getAsBoolean());
        assertTrue(flowing(Desk.run("hours", file)).contains("THINNED"));
    }
}
