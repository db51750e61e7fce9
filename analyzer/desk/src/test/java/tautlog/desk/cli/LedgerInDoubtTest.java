package tautlog.desk.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;

/** Every command that reads a ledger: what it could not read or did not count stands on top. The sample day overloads the choker. */
class LedgerInDoubtTest {
    private static final String TORN = """
            {"id":"a1","kind":"inspected","at":"2026-05-04T07:30:00Z","by":"A. Reed","gear":"choker","result":"back-in-service"}
            {"id":"a2","kind":"out-of-service","at":"2026-05-04T08:00:00Z","ge""";
    private static final String MISSPELT = """
            {"id":"a3","kind":"out-of-service","at":"2026-05-04T08:00:00Z","winch":"uper-landing","gear":"block-1"}
            """;
    private static final String NEAR = "Did somebody mean \"upper-landing\"?";

    @TempDir
    Path folder;

    private Path recordings;
    private Path ledger;

    @BeforeEach
    void records() throws IOException {
        recordings = Files.createDirectory(folder.resolve("recordings"));
        SampleDay.write(recordings);
        ledger = folder.resolve("ledger.jsonl");
        Files.writeString(folder.resolve("service.toml"), """
                schema = 1
                [[task]]
                id = "joint-crosses"
                title = "Grease the crosses"
                on = "winch"
                every = { shaft_h = 8 }
                source = "common practice, no source"
                """);
    }

    private Desk run(String command, Object... more) {
        List<Object> all = new ArrayList<>(Arrays.asList((Object[]) command.split(" ")));
        all.addAll(List.of(recordings, "--zone", "UTC", "--ledger", ledger));
        if (command.startsWith("service")) {
            all.add("--no-cache");
        }
        if (command.equals("service list")) {
            all.addAll(List.of("--tasks", folder.resolve("service.toml")));
        }
        all.addAll(Arrays.asList(more));
        return Desk.run(all.toArray());
    }

    /** Where it stands among the page's words; it must be near the top, before any table. */
    private static void onTop(Desk told, String what) {
        String page = told.out().replaceAll("\\s+", " ");
        int place = page.indexOf(what);
        assertTrue(place >= 0 && place < 800, () -> what + " at " + place + " of " + told.out());
    }

    @ParameterizedTest
    @ValueSource(strings = {"service list", "service gear", "hours", "report"})
    void aTornLineStandsOnTopAndEndsWithThree(String command) throws IOException {
        Files.writeString(ledger, TORN);

        Desk told = run(command);

        assertEquals(3, told.code(), told.out());
        onTop(told, "! ledger.jsonl, line 2: this line is torn");
        assertTrue(told.err().contains("ledger.jsonl:2: this line is torn"), told.err());
        assertEquals(3, run(command, "--json").code());
    }

    @ParameterizedTest
    @ValueSource(strings = {"service list", "service gear", "hours", "report"})
    void aFileThatIsNoLedgerStandsOnTopAndEndsWithThree(String command) throws IOException {
        ledger = folder.resolve("letter.txt");
        Files.writeString(ledger, "Dear crew,\n".repeat(500));

        Desk told = run(command);

        assertEquals(3, told.code(), told.out());
        onTop(told, "! letter.txt: this is no ledger: none of its lines is an entry.");
        assertTrue(told.out().contains("490 more lines"), told.out());
    }

    @ParameterizedTest
    @ValueSource(strings = {"service list", "service gear", "hours", "report"})
    void entriesOfAMisspeltWinchStandOnTop(String command) throws IOException {
        Files.writeString(ledger, MISSPELT);

        Desk told = run(command);

        assertEquals(0, told.code(), told.err());
        onTop(told, "of a winch \"uper-landing\", of which no recording is here");
        onTop(told, NEAR);
        assertEquals(2, told.out().replaceAll("\\s+", " ").split("\"uper-landing\"", -1).length, told.out());
    }

    @Test
    void aLedgerWithoutFaultAddsNothing() throws IOException {
        Files.writeString(ledger, TORN.lines().findFirst().orElseThrow() + "\n");

        for (String command : List.of("service list", "service gear", "hours", "report")) {
            Desk told = run(command);
            assertEquals(0, told.code(), told.err());
            assertTrue(!told.out().contains("UNREAD OR IN DOUBT"), told.out());
        }
    }

    @Test
    void theListNamesGearThatIsOutOnTop() throws IOException {
        Files.writeString(ledger, MISSPELT.replace("uper", "upper"));

        Desk listed = run("service list");

        onTop(listed, "! Out of service: choker (past-proof)");
        onTop(listed, "block-1 (taken out)");
        onTop(listed, "tautlog service gear");
        JsonArray out = JsonParser.parseString(run("service list", "--json").out())
                .getAsJsonObject()
                .getAsJsonArray("gear_out_of_service");
        JsonObject choker = out.asList().stream()
                .map(one -> one.getAsJsonObject())
                .filter(one -> one.get("gear").getAsString().equals("choker"))
                .findFirst()
                .orElseThrow();
        assertEquals("past-proof", choker.get("worst").getAsString());
        assertEquals("out-of-service", choker.get("standing").getAsString());

        Files.writeString(ledger, TORN.lines().findFirst().orElseThrow() + "\n");
        assertTrue(!run("service list").out().contains("choker (past-proof)"));
    }
}
