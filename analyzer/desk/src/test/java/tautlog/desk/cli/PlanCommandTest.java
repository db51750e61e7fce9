package tautlog.desk.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;

class PlanCommandTest {
    private static final String LOG = "Norway spruce, 12 m, 40/28 cm";

    @TempDir
    Path folder;

    private Path rig;

    @BeforeEach
    void writesARig() throws IOException {
        rig = folder.resolve("rig.toml");
        Files.writeString(rig, SampleDay.rigToml());
    }

    @Test
    void printsAPlanOfEveryHookup() {
        Desk run = Desk.run("plan", "--rig", rig, "--log", LOG, "--ground", "flat", "--slope", "-5 %");

        assertEquals(0, run.code(), run.err());
        assertTrue(run.err().isEmpty(), run.err());
        assertTrue(run.out().startsWith("Plan of a pull with upper-landing\n"), run.out());
        assertTrue(run.out().contains("STRAIGHT") && run.out().contains("ROUND-THE-CORNER"), run.out());
    }

    @Test
    void writesOneJsonDocumentAndAPageBesideIt() throws IOException {
        Path page = folder.resolve("plan.html");

        Desk run = Desk.run("plan", "--rig", rig, "--log", LOG, "--hookup", "straight", "--json", "--html", page);

        JsonObject plan = JsonParser.parseString(run.out()).getAsJsonObject();
        assertEquals(0, run.code(), run.err());
        assertEquals(1, plan.get("schema").getAsInt());
        assertEquals(1, plan.getAsJsonArray("hookups").size());
        assertTrue(plan.getAsJsonObject("ground").get("assumed").getAsBoolean());
        assertTrue(plan.getAsJsonObject("ground").get("class").isJsonNull());
        assertEquals(672.8, plan.getAsJsonObject("log").get("density_kg_m3").getAsDouble(), 0.05);
        assertTrue(Files.readString(page).contains("<h1>Plan of a pull with upper-landing</h1>"));
    }

    @Test
    void tellsAllThatIsWrongAtOnceAndPrintsNothing() {
        Desk run =
                Desk.run("plan", "--rig", rig, "--log", "spruce, 12 m, 28/40 cm", "--slope", "steep", "--hookup", "x");

        assertEquals(2, run.code());
        assertTrue(run.out().isEmpty(), run.out());
        for (String part : new String[] {"--log: \"spruce\"", "--log: diameters", "--slope: ", "--hookup: "}) {
            assertTrue(run.err().contains(part), run.err());
        }
    }

    @Test
    void twoDocumentsDoNotGoToOneOutput() {
        Desk run = Desk.run("plan", "--rig", rig, "--log", LOG, "--json", "--html", "-");

        assertEquals(2, run.code());
        assertTrue(run.out().isEmpty());
    }

    @Test
    void showsForcesInTheUnitAskedFor() {
        assertTrue(Desk.run("plan", "--rig", rig, "--log", LOG, "--units", "lbf")
                .out()
                .contains(" lbf"));
    }
}
