package tautlog.desk.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;
import tautlog.desk.fixtures.SampleDay;

/** The command over two copies of a sample minute and another an hour later. */
class ServiceGearTest {
    private static final String INSPECTED = """
            {"id":"a1","kind":"inspected","at":"2026-05-04T07:30:00Z","by":"A. Reed","gear":"choker","result":"back-in-service"}
            {"id":"a2","kind":"inspected","at":"2026-05-04T12:00:00Z","by":"A. Reed","gear":"rope","result":"stays-out","broken_wires_in_lay":12}
            """;

    @TempDir
    Path folder;

    private Path recordings;

    @BeforeEach
    void records() throws IOException {
        recordings = Files.createDirectory(folder.resolve("recordings"));
        Path first = SampleDay.write(recordings);
        Files.copy(first, recordings.resolve("copy-of-it.tautlog"));
        SampleDay.write(recordings, "later.tautlog", 8, 3_600);
    }

    private String run(String... more) throws IOException {
        StringWriter out = new StringWriter();
        String[] arguments = new String[more.length + 6];
        System.arraycopy(
                new String[] {recordings.toString(), "--zone", "UTC", "--no-cache", "--ledger", ledger()},
                0,
                arguments,
                0,
                6);
        System.arraycopy(more, 0, arguments, 6, more.length);
        int code = new CommandLine(new ServiceGearCommand())
                .setOut(new PrintWriter(out))
                .setExecutionExceptionHandler(new Exits())
                .execute(arguments);
        assertEquals(0, code);
        return out.toString();
    }

    private String ledger() throws IOException {
        return Files.writeString(folder.resolve("ledger.jsonl"), INSPECTED).toString();
    }

    private static JsonObject gear(String json, String id) {
        return JsonParser.parseString(json)
                .getAsJsonObject()
                .getAsJsonArray("winches")
                .get(0)
                .getAsJsonObject()
                .getAsJsonArray("gear")
                .asList()
                .stream()
                .map(one -> one.getAsJsonObject())
                .filter(one -> one.get("id").getAsString().equals(id))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void countsACopyOnceAndKnowsWhatTheInspectionAnswers() throws IOException {
        JsonObject choker = gear(run("--json"), "choker");

        // two overloads in each of two minutes; the inspection lies between them
        assertEquals(4, choker.getAsJsonArray("overloads").size());
        JsonObject pieces = choker.getAsJsonArray("pieces").get(0).getAsJsonObject();
        assertEquals("out-of-service", pieces.get("standing").getAsString());
        assertEquals(2, pieces.get("open").getAsInt());
        assertEquals(6, pieces.get("count").getAsInt());
    }

    @Test
    void readsAsAPageWithWhatIsOutFirst() throws IOException {
        String page = run().replaceAll("\\s+", " ");

        int out = page.indexOf("OUT OF SERVICE");
        assertTrue(out > 0 && out < page.indexOf("GEAR Gear Pieces"), page);
        assertTrue(page.contains("Discard the rope: 10 or more broken wires in one lay length"), page);
        assertTrue(page.contains("Greatest torque: "), page);
        assertTrue(page.contains("One joint at 8° makes the speed behind it swing twice a turn by 2.0 %"), page);
    }

    @Test
    void drawsTorqueOverSpeed() throws IOException {
        Path page = folder.resolve("gear.html");

        run("--html", page.toString());

        assertTrue(Files.readString(page).contains("torque, % of rated, 100 % = 1120 N m"));
    }
}
