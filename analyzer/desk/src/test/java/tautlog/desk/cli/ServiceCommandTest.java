package tautlog.desk.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import biweekly.Biweekly;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.fixtures.ShortDay;
import tautlog.recording.RecordingWriter;

/** From recordings, tasks and a ledger to what is due, through the commands. The sample day is 4 May 2026, 07:00 to 07:01 UTC. */
class ServiceCommandTest {
    private static final String EVENING = "2026-05-04T18:00:00Z";

    @TempDir
    Path folder;

    private Path recordings;
    private Path tasks;
    private Path ledger;

    @BeforeEach
    void aDayATaskAndAPlaceForTheLedger() throws IOException {
        recordings = Files.createDirectory(folder.resolve("recordings"));
        SampleDay.write(recordings);
        ledger = folder.resolve("ledger.jsonl");
        tasks = Files.writeString(folder.resolve("service.toml"), """
                schema = 1
                [[task]]
                id = "joint-crosses"
                title = "Grease the crosses"
                on = "winch"
                every = { shaft_h = 8 }
                source = "common practice, no source"
                [[task]]
                id = "choker-after-overload"
                title = "A competent person decides"
                on = "choker"
                after = "overload"
                [[task]]
                id = "strap-after-overload"
                title = "A competent person decides"
                on = "strap-1"
                after = "overload"
                """);
    }

    private Desk list(Object... more) {
        return service("list", more);
    }

    private Desk service(String command, Object... more) {
        List<Object> all = new ArrayList<>(List.of("service", command, recordings, "--tasks", tasks));
        all.addAll(List.of("--as-of", EVENING, "--zone", "UTC", "--no-cache"));
        if (Files.exists(ledger)) {
            all.addAll(List.of("--ledger", ledger));
        }
        all.addAll(Arrays.asList(more));
        return Desk.run(all.toArray());
    }

    private Desk enter(Object... what) {
        List<Object> all = new ArrayList<>(List.of("service"));
        all.addAll(Arrays.asList(what));
        all.addAll(List.of("--ledger", ledger));
        return Desk.run(all.toArray());
    }

    private JsonObject task(String id) {
        JsonObject document = JsonParser.parseString(list("--json").out()).getAsJsonObject();
        assertEquals(1, document.get("schema").getAsInt());
        for (JsonElement task : document.getAsJsonArray("tasks")) {
            if (task.getAsJsonObject().get("task").getAsString().equals(id)) {
                return task.getAsJsonObject();
            }
        }
        throw new AssertionError("no task " + id + " in " + document);
    }

    private String standing(String id) {
        return task(id).get("standing").getAsString();
    }

    private static String id(Desk entered) {
        assertEquals(0, entered.code(), entered.err());
        return entered.out().replaceAll("(?s).* as (\\S+?)[.,].*", "$1");
    }

    @Test
    void saysWhatIsDueFirstAndThatNothingIsKnownOfWhatWasNeverEntered() {
        Desk listed = list();

        assertEquals(0, listed.code(), listed.err());
        List<String> lines = listed.out().lines().toList();
        assertEquals("Service of upper-landing", lines.get(0));
        assertTrue(lines.indexOf("DUE") > 0 && lines.indexOf("DUE") < lines.indexOf("NOT KNOWN: MAY BE DUE"));
        assertTrue(
                listed.out()
                        .replaceAll("\\s+", " ")
                        .contains(
                                "! choker-after-overload: A competent person decides. 2 overloads, the first on 4 May 2026"
                                        + " 07:00; never entered as done."),
                listed.out());
        assertTrue(listed.out().contains("No ledger was read"));
        assertEquals("unknown", standing("joint-crosses"));
        assertEquals("overdue", task("joint-crosses").get("may_be").getAsString());
    }

    @Test
    void countsFromWhenItWasDone() {
        enter("done", "joint-crosses", "--at", "2026-05-04T07:00:30Z", "--by", "Wren", "--tasks", tasks);
        // the outing went on while it was done: all of it counts
        JsonObject joint = task("joint-crosses");
        assertEquals("later", joint.get("standing").getAsString());
        assertEquals("Wren", joint.get("by").getAsString());
        double shaft = joint.getAsJsonArray("meters")
                .get(0)
                .getAsJsonObject()
                .get("least")
                .getAsDouble();
        assertTrue(shaft > 0.008 && shaft < 0.012, () -> "34 s of the shaft are 0.0094 h, was " + shaft);

        enter("inspect", "choker", "--result", "back-in-service", "--by", "Wren", "--at", "2026-05-04T17:30:00Z");
        enter("worked", "--from", "2026-05-04T08:00:00Z", "--to", "2026-05-04T17:00:00Z", "--shaft-h", "8");
        assertEquals("due", standing("joint-crosses"));
        assertEquals(1, list("--fail-on", "due").code());
        assertEquals(0, list("--fail-on", "overdue").code());
        assertEquals(2, list("--fail-on", "later").code());
    }

    @Test
    void aNamedInspectionAnswersTheOverloadAndWithdrawingItOpensItAgain() {
        assertEquals("due", standing("choker-after-overload"));
        Desk nameless = enter("inspect", "choker", "--result", "back-in-service");
        assertEquals(2, nameless.code());
        assertTrue(nameless.err().startsWith("--by: nobody is named."));
        assertFalse(Files.exists(ledger));

        String id = id(enter(
                "inspect",
                "choker",
                "--result",
                "back-in-service",
                "--by",
                "Wren",
                "--at",
                "2026-05-04T12:00:00Z",
                "--link-thickness-mm",
                "7.6"));
        assertEquals("later", standing("choker-after-overload"));

        Desk withdrawn = enter("withdraw", id.substring(id.length() - 5), "--note", "wrong choker");
        assertEquals(0, withdrawn.code(), withdrawn.err());
        assertTrue(withdrawn.out().contains("in place of " + id));
        assertEquals("due", standing("choker-after-overload"));
    }

    @Test
    void anOverloadOfOnePieceOfGearCallsForNothingOnAnother() {
        assertEquals("due", standing("choker-after-overload"));
        assertEquals("later", standing("strap-after-overload"));
    }

    @Test
    void aCorrectionCountsInPlaceOfWhatItReplaces() {
        String id = id(enter("done", "joint-crosses", "--at", "2026-05-04T06:00:00Z"));
        enter("done", "joint-crosses", "--at", "2026-05-03T06:00:00Z", "--by", "Wren", "--replaces", id);

        assertEquals(
                "2026-05-03T06:00:00.000000Z",
                task("joint-crosses").get("since").getAsString());
        Desk unknown = enter("done", "joint-crosses", "--replaces", "20200101T000000Z-0");
        assertEquals(2, unknown.code());
        assertTrue(unknown.err().contains("There is no entry \"20200101T000000Z-0\" in the ledger."), unknown.err());
    }

    @Test
    void namesATornLineCountsTheOthersAndEndsWithThree() throws IOException {
        enter("done", "joint-crosses", "--at", "2026-05-04T06:00:00Z");
        Files.writeString(ledger, "{\"id\":\"20260504T1", StandardOpenOption.APPEND);
        enter("fitted", "choker", "--at", "2026-05-04T06:30:00Z", "--by", "Wren");

        Desk listed = list();

        assertEquals(3, listed.code());
        assertTrue(listed.err().contains("ledger.jsonl:2: this line is torn"), listed.err());
        assertTrue(listed.out().contains("! ledger.jsonl, line 2: this line is torn"), listed.out());
        assertEquals("fitted", task("choker-after-overload").get("since_is").getAsString());
        assertEquals("done", task("joint-crosses").get("since_is").getAsString());
    }

    @Test
    void refusesWhatCannotBe() throws IOException {
        Desk future = enter("done", "joint-crosses", "--at", "2999-01-01");
        assertEquals(2, future.code());
        assertTrue(future.err().contains("--at: 2999-01-01 is still to come."));
        Desk stranger = enter("done", "joint-croses", "--tasks", tasks);
        assertEquals(2, stranger.code());
        assertTrue(stranger.err().contains("Did you mean joint-crosses?"));
        assertEquals(
                2, enter("worked", "--from", "2026-05-05", "--to", "2026-05-04").code());
        assertEquals(
                2,
                enter("worked", "--from", "2026-05-04", "--to", "2026-05-04", "--shaft-h", "25")
                        .code());
        Desk comma = enter("worked", "--from", "2026-05-04", "--to", "2026-05-04", "--shaft-h", "2,5");
        assertEquals(2, comma.code());
        assertTrue(
                comma.err().startsWith("--shaft-h: \"2,5\" is not a number.\n  Write digits with a point, as in 2.5."),
                comma.err());
        Desk verdict = enter("inspect", "choker", "--by", "Wren", "--result", "fine");
        assertEquals(2, verdict.code());
        assertTrue(verdict.err().contains("\"back-in-service\", \"scrap\", \"stays-out\""), verdict.err());
        assertEquals(
                2,
                Desk.run("service", "done", "x", "--ledger", folder.resolve("a.tautlog"))
                        .code());
        assertFalse(Files.exists(ledger));
        Desk missing = Desk.run("service", "list", recordings, "--tasks", tasks, "--ledger", ledger);
        assertEquals(2, missing.code());
        assertTrue(missing.err().startsWith("--ledger: there is no file "));
        Files.writeString(tasks, "schema = 1\n[[task]]\nid = 1\n");
        assertEquals(2, list().code());
        assertEquals(2, Desk.run("service").code());
    }

    @Test
    void aRecordingThatWasCopiedTwiceCountsOnceAndAShaftThatNeverSpokeIsNotNone() throws IOException {
        enter("done", "joint-crosses", "--at", "2026-05-04T06:00:00Z");
        double once = least();
        Path file = recordings.resolve("upper-landing_2026-05-04.tautlog");
        Files.copy(file, recordings.resolve("copy.tautlog"));
        assertEquals(once, least());

        try (RecordingWriter later = RecordingWriter.open(recordings.resolve("later.tautlog"), "upper-landing")) {
            ShortDay.append(later, 9, 600, SampleDay.rigToml(), day -> day.hold(60, 0));
        }
        JsonObject meter = task("joint-crosses").getAsJsonArray("meters").get(0).getAsJsonObject();
        // 61 s without a shaft reading may be 61 s of the shaft; a gap of the sample day as before
        assertEquals(once, meter.get("least").getAsDouble(), 1e-9);
        assertTrue(meter.get("greatest").getAsDouble() - once > 60 / 3600.0, meter::toString);
    }

    private double least() {
        return task("joint-crosses")
                .getAsJsonArray("meters")
                .get(0)
                .getAsJsonObject()
                .get("least")
                .getAsDouble();
    }

    @Test
    void withSeveralWinchesAnEntryWithoutAWinchReassuresNobody() throws IOException {
        ShortDay.write(recordings, "hillside.tautlog", day -> day.hold(5, 0));
        enter("done", "joint-crosses", "--at", "2026-05-04T06:00:00Z");
        enter("done", "joint-crosses", "--at", "2026-05-04T06:10:00Z", "--winch", "hillside");

        Desk listed = list();

        assertTrue(listed.out().contains("does not say of which winch"), listed.out());
        assertTrue(listed.out().contains("- upper-landing, joint-crosses:"), listed.out());
        assertTrue(listed.out().contains("- hillside, joint-crosses: 0.00"), listed.out());
    }

    @Test
    void saysWhereTheRecordingsEndWhenThatWasNotToday() {
        String end = "The last recording of upper-landing here ends 4 May 2026 07:01";
        Desk later = Desk.run(
                "service", "list", recordings, "--tasks", tasks, "--as-of", "2026-05-05T06:00:00Z", "--zone", "UTC");

        assertTrue(later.out().replaceAll("\\s+", " ").contains(end), later.out());
        assertFalse(list().out().replaceAll("\\s+", " ").contains(end));
    }

    @Test
    void namesAWinchOfTheLedgerThatNoRecordingIsOf() {
        enter("worked", "--from", "2026-05-04T08:00:00Z", "--to", "2026-05-04T17:00:00Z", "--winch", "uper-landing");

        String listed = list().out().replaceAll("\\s+", " ");
        assertTrue(listed.contains("of a winch \"uper-landing\", of which no recording is here"), listed);
        assertTrue(listed.contains("Did somebody mean \"upper-landing\"?"), listed);
    }

    @Test
    void forecastsWhatItCanSaysWhatItCannotAndWritesACalendar() throws IOException {
        Path ics = folder.resolve("service.ics");
        Desk told = service("forecast", "--ics", ics);

        assertEquals(0, told.code(), told.err());
        assertTrue(told.out().contains("! choker-after-overload: Due now."), told.out());
        assertTrue(
                told.err()
                        .contains(
                                "not in the calendar: upper-landing, strap-after-overload: Due when it happens: overload."),
                told.err());
        assertFalse(told.err().contains("choker"), told.err());
        assertEquals("", service("forecast").err());
        assertTrue(
                told.out().replaceAll("\\s+", " ").contains("Not enough use to say when by h of the shaft"),
                told.out());
        assertEquals(
                2, Biweekly.parse(Files.readString(ics)).first().getEvents().size());
        JsonObject json =
                JsonParser.parseString(service("forecast", "--json").out()).getAsJsonObject();
        JsonObject choker = json.getAsJsonArray("tasks").get(0).getAsJsonObject();
        assertEquals("2026-05-04", choker.get("earliest").getAsString());
        assertEquals(2, service("forecast", "--json", "--ics", "-").code());
        assertTrue(service("forecast", "--ics", "-").out().startsWith("BEGIN:VCALENDAR\r\n"));
    }

    @Test
    void writesNoCalendarThatWouldHoldNothing() throws IOException {
        Files.writeString(tasks, """
                schema = 1
                [[task]]
                id = "strap-after-overload"
                title = "A competent person decides"
                on = "strap-1"
                after = "overload"
                """);
        Path ics = Files.writeString(folder.resolve("service.ics"), "older");

        Desk told = service("forecast", "--ics", ics);

        assertEquals(0, told.code(), told.err());
        assertTrue(told.err()
                .startsWith("--ics: no task has a day: there is no calendar to write. " + ics + " is as it was.\n"));
        assertEquals("older", Files.readString(ics));
        assertEquals("", service("forecast", "--ics", "-").out());
    }

    @Test
    void theForecastTellsWhatTheListTellsOfTheLedger() throws IOException {
        enter("done", "joint-crosses", "--at", "2026-05-04T06:00:00Z");
        enter("retire", "shackel-2", "--at", "2026-05-04T06:00:00Z");
        enter("out-of-service", "bock-1", "--at", "2026-05-04T06:00:00Z");
        Files.writeString(ledger, "{\"id\":\"20260504T1", StandardOpenOption.APPEND);

        String text = service("forecast").out().replaceAll("\\s+", " ");

        int tasksBegin = text.indexOf(" TASKS ");
        assertTrue(text.indexOf("! ledger.jsonl, line 4: this line is torn") < tasksBegin, text);
        assertTrue(text.contains("! ledger.jsonl, line 4: this line is torn"), text);
        assertTrue(text.contains("gear \"bock-1\" that no rig has"), text);
        assertTrue(text.indexOf("\"bock-1\"") < tasksBegin, text);
        assertTrue(text.contains("Did somebody mean \"block-1\"?"), text);
        assertFalse(text.contains("shackel-2"), "gear that was retired last is rightly in no rig");
        JsonObject json =
                JsonParser.parseString(service("forecast", "--json").out()).getAsJsonObject();
        assertEquals(
                4,
                json.getAsJsonArray("ledger_lines")
                        .get(0)
                        .getAsJsonObject()
                        .get("line")
                        .getAsInt());
    }

    @Test
    void namesTwoEntriesOfWorkInTheSameTime() {
        String one =
                id(enter("worked", "--from", "2026-05-02", "--to", "2026-05-03", "--shaft-h", "4", "--by", "Wren"));
        String other = id(enter(
                "worked", "--from", "2026-05-03", "--to", "2026-05-03", "--shaft-h", "2", "--winch", "upper-landing"));

        for (Desk told : List.of(
                list(),
                service("forecast"),
                Desk.run("hours", recordings, "--ledger", ledger),
                Desk.run("service", "gear", recordings, "--no-cache", "--ledger", ledger))) {
            String text = told.out().replaceAll("\\s+", " ");
            assertTrue(
                    text.contains("- Entered twice: Entries " + one + " (by Wren) and " + other + " tell of work"),
                    text + told.err());
            assertTrue(text.contains("tautlog service withdraw " + other + " --ledger"), text);
        }
        assertEquals(0, enter("withdraw", other).code());
        assertFalse(list().out().contains("Entered twice"), list().out());
    }

    @Test
    void refusesToTakeBackTwiceAndOffersNothingElseThere() {
        String id = id(enter("done", "joint-crosses", "--at", "2026-05-04T06:00:00Z"));
        String by = id(enter("withdraw", id));

        Desk again = enter("withdraw", id);
        assertEquals(2, again.code());
        assertTrue(again.err().startsWith(id + " is taken back already, by " + by + "."), again.err());
        assertEquals(2, enter("withdraw", by).code());

        String help = Desk.run("service", "withdraw", "--help").out();
        for (String option : List.of("--at", "--winch", "--replaces", "--zone")) {
            assertFalse(help.contains(option), help);
        }
        assertTrue(help.contains("--by") && help.contains("--note") && help.contains("--ledger"), help);
    }

    @Test
    void gearIsPutIntoServiceOnlyWithANameUnderIt() throws IOException {
        Desk nameless = enter("fitted", "choker");
        assertEquals(2, nameless.code());
        assertTrue(nameless.err().startsWith("--by: nobody is named."), nameless.err());
        assertFalse(Files.exists(ledger));

        Files.writeString(
                ledger, "{\"id\":\"f1\",\"kind\":\"fitted\",\"at\":\"2026-05-04T12:00:00Z\",\"gear\":\"choker\"}\n");
        String listed = list().out().replaceAll("\\s+", " ");
        assertEquals("due", standing("choker-after-overload"));
        assertTrue(listed.contains("! Out of service: choker (past-proof)"), listed);
        assertTrue(listed.contains("it does not say who fitted it"), listed);

        enter("fitted", "choker", "--by", "Wren", "--at", "2026-05-04T12:00:00Z", "--replaces", "f1");
        assertEquals("later", standing("choker-after-overload"));
        assertFalse(list().out().contains("choker (past-proof)"));
    }

    @Test
    void refusesGearThatTheRigHasNotAndFiguresThatItsKindHasNot() throws IOException {
        Path rig = Files.writeString(folder.resolve("rig.toml"), SampleDay.rigToml());
        Desk stranger = enter("inspect", "chokr", "--by", "Wren", "--result", "scrap", "--rig", rig);
        assertEquals(2, stranger.code());
        assertTrue(stranger.err().startsWith("There is no gear \"chokr\" in " + rig), stranger.err());
        assertTrue(stranger.err().contains("Did you mean choker?"), stranger.err());
        for (String command : List.of("fitted", "out-of-service")) {
            assertEquals(
                    2, enter(command, "chokr", "--by", "Wren", "--rig", rig).code());
        }
        Desk wires = enter(
                "inspect", "choker", "--by", "Wren", "--result", "scrap", "--broken-wires-in-lay", "2", "--rig", rig);
        assertEquals(2, wires.code());
        assertEquals(
                "--broken-wires-in-lay: \"choker\" is chain, only rope has broken wires in one lay length.",
                wires.err().lines().findFirst().orElseThrow());
        assertFalse(Files.exists(ledger));
        Desk fits = enter(
                "inspect", "choker", "--by", "Wren", "--result", "scrap", "--link-thickness-mm", "6", "--rig", rig);
        assertEquals(0, fits.code(), fits.err());
        assertEquals("", fits.err());
    }

    @Test
    void gearThatTheRigHasNoMoreCanBeRetired() throws IOException {
        Path rig = Files.writeString(folder.resolve("rig.toml"), SampleDay.rigToml());
        enter("out-of-service", "skidding-cone", "--at", "2026-05-04T12:00:00Z");
        assertTrue(list().out().replaceAll("\\s+", " ").contains("If it is gone, enter it as retired."));

        Desk retired = enter("retire", "skidding-cone", "--rig", rig, "--at", "2026-05-04T13:00:00Z");

        assertEquals(0, retired.code(), retired.err());
        assertTrue(retired.err().startsWith("There is no gear \"skidding-cone\" in " + rig), retired.err());
        assertTrue(retired.err().contains("That is right of gear that is gone."), retired.err());
        assertFalse(list().out().contains("skidding-cone"), list().out());
        assertEquals("", enter("retire", "choker", "--rig", rig).err());
    }

    @Test
    void workedHasNoTimeBesidesItsSpan() throws IOException {
        Desk at = enter("worked", "--from", "2026-05-04", "--to", "2026-05-04", "--at", "2026-05-04");
        assertEquals(2, at.code());
        assertFalse(Files.exists(ledger));
        String help = Desk.run("service", "worked", "--help").out();
        assertFalse(help.contains("--at"), help);
        assertTrue(help.contains("--winch") && help.contains("--replaces") && help.contains("--zone"), help);
        Desk future = enter("worked", "--from", "2999-01-01", "--to", "2999-01-02");
        assertEquals(2, future.code());
        assertTrue(future.err().startsWith("--from: 2999-01-01 is still to come."), future.err());
    }

    @Test
    void refusesToCorrectWhatWasTakenBack() throws IOException {
        String id = id(enter("done", "joint-crosses", "--at", "2026-05-04T06:00:00Z"));
        String by = id(enter("withdraw", id));
        String before = Files.readString(ledger);

        Desk again = enter("done", "joint-crosses", "--replaces", id);
        assertEquals(2, again.code());
        assertTrue(again.err().contains("--replaces: " + id + " is taken back already, by " + by + "."), again.err());
        assertTrue(again.err().contains("Enter it without --replaces."), again.err());
        assertEquals(2, enter("done", "joint-crosses", "--replaces", by).code());
        assertEquals(before, Files.readString(ledger));
    }

    @Test
    void whatWasEnteredWithoutARigIsHeldAgainstThatOfTheRecordings() {
        Desk entered = enter(
                "inspect",
                "choker",
                "--by",
                "Wren",
                "--result",
                "stays-out",
                "--broken-wires-in-lay",
                "2",
                "--at",
                "2026-05-04T12:00:00Z");
        assertTrue(entered.err().startsWith("Not checked whether there is such gear: give --rig"), entered.err());

        for (Desk told : List.of(list(), Desk.run("service", "gear", recordings, "--no-cache", "--ledger", ledger))) {
            String text = told.out().replaceAll("\\s+", " ");
            assertTrue(
                    text.contains(
                            "- Other gear: Entry " + id(entered)
                                    + " tells the broken wires in one lay length of \"choker\", which is chain: only rope has that."),
                    text);
        }
    }

    @Test
    void theShippedTasksGoWithTheSampleDay() {
        tasks = Path.of(System.getProperty("tautlog.root"), "samples", "service.toml");

        Desk listed = list();

        assertEquals(0, listed.code(), listed.err());
        String text = listed.out().replaceAll("\\s+", " ");
        assertTrue(text.contains("has no gear \"thin-choker\""), listed.out()); // the rig of this day has none
        assertEquals(2, text.split("has no gear", -1).length, listed.out());
    }
}
