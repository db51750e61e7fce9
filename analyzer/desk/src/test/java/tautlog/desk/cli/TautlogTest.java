package tautlog.desk.cli;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.RandomAccessFile;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;

/** The program from outside: exit codes, streams, help. */
class TautlogTest {
    @TempDir
    static Path folder;

    private static Path recording;

    @BeforeAll
    static void recordsADay() throws IOException {
        recording = SampleDay.write(folder);
    }

    /** picocli formats each line of these: a bare percent sign prints a warning above the help. */
    @Test
    void canFormatWhatEveryHelpSaysBeforeItsOptions() {
        List<String> lines = new ArrayList<>();
        collectHelp(Tautlog.commandLine(), lines);

        assertTrue(lines.size() > 40, lines::toString);
        lines.forEach(line -> assertDoesNotThrow(() -> String.format(line), line));
    }

    private static void collectHelp(CommandLine command, List<String> lines) {
        var usage = command.getCommandSpec().usageMessage();
        for (String[] part :
                List.of(usage.header(), usage.headerHeading().split("\n"), usage.description(), usage.footer())) {
            lines.addAll(List.of(part));
        }
        command.getSubcommands().values().forEach(sub -> collectHelp(sub, lines));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "report",
                "incident",
                "hours",
                "limits",
                "plan",
                "calibrate",
                "verify",
                "import",
                "export",
                "pack",
                "view"
            })
    void beginsItsHelpWithTwoExamples(String command) {
        Desk help = command.isEmpty() ? Desk.run("--help") : Desk.run(command, "--help");

        String[] lines = help.out().split("\n");
        assertEquals(0, help.code());
        assertEquals("Examples:", lines[0]);
        assertTrue(lines[1].startsWith("  tautlog "), help.out());
        assertTrue(lines[2].startsWith("  tautlog "), help.out());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "service"})
    void namesEveryCommandWhenNoneIsGiven(String group) {
        CommandLine line = Tautlog.commandLine();
        CommandLine of = group.isEmpty() ? line : line.getSubcommands().get(group);

        Desk run = group.isEmpty() ? Desk.run() : Desk.run(group);

        assertEquals(2, run.code());
        of.getSubcommands()
                .keySet()
                .forEach(command -> assertTrue(run.err().matches("(?s).*: .*\\b" + command + "\\b.*"), run.err()));
        assertTrue(run.err().startsWith("Name a command: "), run.err());
    }

    @Test
    void offersTheNearestOptionForAMistypedOne() {
        Desk run = Desk.run("report", recording, "--htlm", "x.html");

        assertEquals(2, run.code());
        assertTrue(run.err().contains("--html"), run.err());
        assertTrue(run.out().isEmpty());
    }

    @Test
    void offersTheNearestOptionWhenLettersChangedPlaces() {
        Desk run = Desk.run("hours", recording, "--josn");

        assertEquals(2, run.code());
        assertTrue(run.err().contains("Did you mean: --json?"), run.err());
    }

    @Test
    void saysThatAPictureIsNoRig() throws IOException {
        Path picture = folder.resolve("rig.jpg");
        Files.write(picture, new byte[] {(byte) 0xFF, (byte) 0xD8, (byte) 0xFF, (byte) 0xE0, 0, 16});

        Desk run = Desk.run("limits", "--rig", picture);

        assertEquals(2, run.code());
        assertTrue(run.err().contains("rig.jpg is no text in UTF-8"), run.err());
    }

    @Test
    void saysThatAPictureIsNoTableAndKeepsItsBytesFromTheTerminal() throws IOException {
        Path picture = folder.resolve("readings.csv");
        Files.write(picture, new byte[] {(byte) 0xFF, (byte) 0xD8, (byte) 0xFF, 27, '[', '3', '1', 'm', 10});
        Path rig = folder.resolve("rig-of-import.toml");
        Files.writeString(rig, SampleDay.rigToml());

        Desk run =
                Desk.run("import", picture, "--rig", rig, "-o", folder, "--time", "t", "--force", "f", "--unit", "kN");

        assertEquals(3, run.code());
        assertTrue(run.err().contains("readings.csv: is no table of text"), run.err());
        assertFalse(run.err().contains("\u001B"), run.err());
    }

    @Test
    void endsWithTwoWithoutACommand() {
        assertEquals(2, Desk.run().code());
    }

    @Test
    void tellsAllProblemsOfARigAtOnce() throws IOException {
        Path bad = folder.resolve("bad.toml");
        Files.writeString(
                bad, SampleDay.rigToml().replace("\"20 kN\"", "\"20 bananas\"").replace("rated_pull", "rated_pul"));

        Desk run = Desk.run("report", recording, "--rig", bad);

        assertEquals(2, run.code());
        assertTrue(run.err().contains("bananas"), run.err());
        assertTrue(run.err().contains("rated_pul"), run.err());
    }

    @Test
    void endsWithTwoForAHookupThatTheRigDoesNotHave() {
        Desk run = Desk.run("report", recording, "--hookup", "nowhere");

        assertEquals(2, run.code());
        assertTrue(run.err().contains("straight, round-the-corner"), run.err());
    }

    @ParameterizedTest
    @ValueSource(strings = {"--from=yesterday", "--zone=Mars/Base", "--units=stones", "--fail-on=past-caring"})
    void endsWithTwoForAValueThatIsNotAllowed(String option) {
        Desk run = Desk.run("report", recording, option);

        assertEquals(2, run.code());
        assertTrue(run.err().contains("\n  "), "the next line says what is allowed: " + run.err());
    }

    @Test
    void endsWithThreeForAFileThatIsNotThere() {
        Desk run = Desk.run("report", folder.resolve("nothing.tautlog"));

        assertEquals(3, run.code());
        assertTrue(run.err().contains("nothing.tautlog"));
        assertTrue(run.out().isEmpty());
    }

    @Test
    void endsWithThreeForAFileThatIsNoRecording() throws IOException {
        Path foreign = folder.resolve("foreign.txt");
        Files.writeString(foreign, "not a recording");

        Desk run = Desk.run("report", foreign);

        assertEquals(3, run.code());
        assertTrue(run.err().contains("foreign.txt"), run.err());
    }

    @Test
    void endsWithOneWhenABandIsReachedThatItIsToFailOn() {
        assertEquals(1, Desk.run("report", recording, "--fail-on", "past-wll").code());
        assertEquals(1, Desk.run("report", recording, "--fail-on", "past-proof").code());
        assertEquals(
                0, Desk.run("report", recording, "--fail-on", "past-breaking").code());
    }

    @Test
    void saysHowToReportABugAndEndsWithSeventy() {
        StringWriter err = new StringWriter();
        CommandLine command = Tautlog.commandLine().setErr(new PrintWriter(err));
        CommandLine.ParseResult parsed = command.parseArgs();

        int code = new Exits().handleExecutionException(new IllegalStateException("boom"), command, parsed);

        assertEquals(70, code);
        assertTrue(err.toString().contains("report it"));
        assertTrue(err.toString().contains("boom"));
    }

    @Test
    void verifiesAnIntactRecording() {
        Desk run = Desk.run("verify", recording);

        assertEquals(0, run.code(), run.out());
        assertTrue(run.out().contains("intact"));
    }

    @Test
    void endsWithThreeAndNamesTheBlockWhenAByteWasFlipped(@TempDir Path other) throws IOException {
        Path damaged = SampleDay.write(other);
        flip(damaged, indexOfBlock(damaged));

        Desk run = Desk.run("verify", damaged, "--json");

        assertEquals(3, run.code());
        JsonObject found = JsonParser.parseString(run.out())
                .getAsJsonObject()
                .getAsJsonArray("recordings")
                .get(0)
                .getAsJsonObject();
        assertFalse(found.get("intact").getAsBoolean());
        assertFalse(found.getAsJsonArray("damages").isEmpty(), run.out());
    }

    /** Somewhere within the samples: past the middle of the file, on an overflow page of a large blob. */
    private static long indexOfBlock(Path file) throws IOException {
        return Files.size(file) / 2 + 100;
    }

    private static void flip(Path file, long at) throws IOException {
        try (RandomAccessFile bytes = new RandomAccessFile(file.toFile(), "rw")) {
            bytes.seek(at);
            int b = bytes.read();
            bytes.seek(at);
            bytes.write(b ^ 0x10);
        }
    }

    @Test
    void printsLimitsInTheUnitThatWasAskedFor() throws IOException {
        Path rig = folder.resolve("rig.toml");
        Files.writeString(rig, SampleDay.rigToml());

        Desk text = Desk.run("limits", "--rig", rig, "--units", "lbf");
        Desk json = Desk.run("limits", "--rig", rig, "--hookup", "straight", "--json");

        // 4700 lbf, chain grade 70, 5/16 in (49 CFR 393.108), choked: 0.75
        assertTrue(text.out().contains("Limit of straight: 3525 lbf in the line, set by choker."), text.out());
        assertEquals(
                SampleDay.LIMIT_NEWTONS,
                JsonParser.parseString(json.out())
                        .getAsJsonObject()
                        .getAsJsonArray("hookups")
                        .get(0)
                        .getAsJsonObject()
                        .get("limit_n")
                        .getAsDouble(),
                0.001);
    }

    @Test
    void refusesToWriteAPageOverARecording() {
        Desk run = Desk.run("report", recording, "--html", recording);

        assertEquals(2, run.code());
        assertEquals(0, Desk.run("verify", recording).code());
    }

    @Test
    void writesOnlyTheTableWhenThatGoesToTheStandardOutput() {
        Desk run = Desk.run("report", recording, "--csv", "-");

        assertTrue(run.out().startsWith("kind,start,end,"), run.out());
        assertEquals(
                run.out().lines().count() - 1,
                run.out()
                        .lines()
                        .filter(line -> line.matches("[a-z-]+,2026-05-04T.*"))
                        .count());
    }

    @Test
    void endsWithSeventyWhenMemoryRunsOut() {
        ByteArrayOutputStream err = new ByteArrayOutputStream();

        int code = Tautlog.guarded(new PrintStream(err, true, StandardCharsets.UTF_8), () -> {
            throw new OutOfMemoryError("a heap too small");
        });

        assertEquals(70, code);
        assertTrue(err.toString(StandardCharsets.UTF_8).contains("a heap too small"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"--json --html -", "--json --csv -", "--html - --csv -"})
    void refusesTwoDocumentsOnTheStandardOutput(String options) {
        String[] words = ("report " + recording + " " + options).split(" ");

        Desk run = Desk.run((Object[]) words);

        assertEquals(2, run.code());
        assertTrue(run.out().isEmpty());
        assertTrue(run.err().contains("only one of them"), run.err());
    }
}
