package tautlog.desk.gear;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;

/** {@code tautlog report --ledger} from outside: six chokers of which one was overloaded at seven in the morning. */
class ReportLedgerTest {
    private static final String INSPECTED = """
            {"id":"a1","kind":"inspected","at":"2026-05-04T12:00:00Z","by":"A. Reed","gear":"choker","result":"back-in-service"}
            """;

    @TempDir
    Path folder;

    private Path recording;

    @BeforeEach
    void recordsTheSampleDay() throws IOException {
        recording = SampleDay.write(folder);
    }

    private Path ledger(String lines) throws IOException {
        return Files.writeString(folder.resolve("ledger.jsonl"), lines);
    }

    private static String flowing(Desk run) {
        return run.out().replaceAll("\\s+", " ");
    }

    private JsonElement out(Object... more) {
        Object[] arguments = new Object[3 + more.length];
        arguments[0] = "report";
        arguments[1] = recording;
        arguments[2] = "--json";
        System.arraycopy(more, 0, arguments, 3, more.length);
        return JsonParser.parseString(Desk.run(arguments).out())
                .getAsJsonObject()
                .get("gear_out_of_service");
    }

    @Test
    void saysThatNoLedgerWasRead() {
        String page = flowing(Desk.run("report", recording, "--zone", "UTC"));

        assertTrue(page.contains("No ledger was read: whether gear was inspected"), page);
        assertTrue(out().isJsonNull());
    }

    @Test
    void keepsGearOutUntilTheLedgerHoldsAnInspection() throws IOException {
        JsonArray out = out("--ledger", ledger("")).getAsJsonArray();
        assertEquals("choker", out.get(0).getAsJsonObject().get("gear").getAsString());
        assertEquals("past-proof", out.get(0).getAsJsonObject().get("worst").getAsString());
        assertEquals(6, out.get(0).getAsJsonObject().get("count").getAsInt());
        assertEquals(2, out.get(0).getAsJsonObject().get("overloads").getAsInt());

        String page =
                flowing(Desk.run("report", recording, "--zone", "UTC", "--ledger", folder.resolve("ledger.jsonl")));
        assertTrue(page.contains("GEAR THAT IS OUT OF SERVICE"), page);
        assertTrue(page.contains("Of 6 identical pieces 6 are out"), page);
        assertTrue(page.contains("Overloaded 2 times without an inspection since"), page);

        JsonArray answered = out("--ledger", ledger(INSPECTED)).getAsJsonArray();
        assertTrue(
                answered.asList().stream()
                        .noneMatch(gear ->
                                gear.getAsJsonObject().get("gear").getAsString().equals("choker")),
                answered::toString);
    }

    @Test
    void tellsNothingOfTheGearUnderWhatIf() throws IOException {
        Path ledger = ledger("");

        assertTrue(out("--ledger", ledger, "--hookup", "round-the-corner").isJsonNull());
        String page = flowing(Desk.run("report", recording, "--ledger", ledger, "--hookup", "round-the-corner"));
        assertTrue(page.contains("This is a WHAT IF: which gear is out of service"), page);
    }

    @Test
    void refusesALedgerThatIsNotThere() {
        Desk run = Desk.run("report", recording, "--ledger", folder.resolve("no.jsonl"));

        assertEquals(2, run.code());
        assertTrue(run.err().contains("--ledger: there is no file"), run.err());
        assertFalse(run.err().contains("Exception"));
    }

    @Test
    void namesALineThatCannotBeRead() throws IOException {
        Desk run = Desk.run("report", recording, "--ledger", ledger("{\"id\":\n" + INSPECTED));

        assertEquals(3, run.code());
        assertTrue(run.err().contains("ledger.jsonl:1:"), run.err());
    }
}
