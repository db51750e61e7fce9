package tautlog.desk.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.fixtures.ShortDay;
import tautlog.sample.HookupSource;

/** When a report is one of the day, and when it is one of what would have been. */
class WhatIfTest {
    @TempDir
    static Path folder;

    private static Path rig;

    @BeforeAll
    static void writesTheRig() throws IOException {
        rig = Files.writeString(folder.resolve("rig.toml"), SampleDay.rigToml());
    }

    private static JsonObject report(Object... arguments) {
        Object[] all = java.util.Arrays.copyOf(arguments, arguments.length + 1);
        all[arguments.length] = "--json";
        Desk run = Desk.run(all);
        assertEquals(0, run.code(), run.err());
        return JsonParser.parseString(run.out()).getAsJsonObject();
    }

    @Test
    void askingForTheHookupThatWasOnlyAssumedOnTheDayIsWhatIf() throws IOException {
        Path said = ShortDay.write(folder, "default.tautlog", day -> day.hookup("straight", HookupSource.DEFAULT));
        Path silent = ShortDay.write(folder, "silent.tautlog", day -> {});

        for (Path recording : List.of(said, silent)) {
            String whatIf = report("report", recording, "--hookup", "straight")
                    .getAsJsonArray("what_if")
                    .toString();
            String page = Desk.run("report", recording, "--hookup", "straight").out();

            assertTrue(whatIf.contains("asked for with --hookup"), whatIf);
            assertTrue(page.contains("WHAT IF"), page);
            assertTrue(page.contains("asked for with --hookup"), page);
            assertFalse(page.contains("said by a person"), page);
        }
    }

    @Test
    void askingForTheHookupThatAPersonNamedIsNoWhatIf() throws IOException {
        Path recording = ShortDay.write(folder, "named.tautlog", day -> day.hookup("straight", HookupSource.MARK));

        assertTrue(report("report", recording, "--hookup", "straight")
                .getAsJsonArray("what_if")
                .isEmpty());
    }

    @Test
    void aRigInPlaceOfOneThatCannotBeReadIsWhatIf() throws IOException {
        Path recording = ShortDay.write(folder, "unreadable.tautlog", "schema = \"none\"", day -> day.hold(1, 100));

        String whatIf = report("report", recording, "--rig", rig)
                .getAsJsonArray("what_if")
                .toString();

        assertTrue(whatIf.contains("The rig stored in the recording cannot be read; another is used."), whatIf);
    }

    @Test
    void anIdThatTheRigDoesNotKnowCountsAsTheHookupWithTheLowestLimitAssumed() throws IOException {
        // the default, straight, is not the lowest: half of round-the-corner's strap is made the lowest
        String text = SampleDay.rigToml().replace("wll = \"20 kN\"", "wll = \"2 kN\"");
        Path recording = ShortDay.write(folder, "stranger.tautlog", text, day -> {
            day.hookup("nobody-knows", HookupSource.MARK);
            day.hold(1, 5_000);
            day.hold(5, 0);
        });

        JsonObject pull =
                report("report", recording).getAsJsonArray("pulls").get(0).getAsJsonObject();
        JsonObject hookup =
                report("report", recording).getAsJsonArray("hookups").get(0).getAsJsonObject();
        String[] row = Desk.run("export", recording, "--csv", "-")
                .out()
                .lines()
                .skip(1)
                .findFirst()
                .orElse("")
                .split(",", -1);

        assertEquals("round-the-corner", pull.get("hookup").getAsString());
        assertTrue(pull.get("hookup_assumed").getAsBoolean());
        assertEquals("round-the-corner", hookup.get("id").getAsString());
        assertTrue(hookup.get("assumed").getAsBoolean());
        assertEquals("round-the-corner", row[6]);
        assertEquals("true", row[11]);
    }

    @Test
    void anOverloadThatRunsAlreadyAtTheStartOfTheTimeAskedForIsListed() throws IOException {
        Path recording = ShortDay.write(folder, "running.tautlog", day -> {
            day.hookup("straight", HookupSource.MARK);
            day.hold(20, 20_000);
            day.hold(5, 0);
        });

        String page = Desk.run("report", recording, "--from", "2026-05-04T07:00:10Z", "--zone", "UTC")
                .out();
        JsonObject before = report("report", recording, "--from", "2026-05-04T07:00:20Z");

        assertFalse(page.contains("No reading was above the limit"), page);
        assertTrue(page.contains("1 overload"), page);
        assertEquals(0, before.getAsJsonArray("overloads").size());
    }

    @Test
    void shaftHoursAreUnknownWhenTheSensorNeverSpoke() throws IOException {
        Path recording = ShortDay.write(folder, "no-shaft.tautlog", day -> day.hold(5, 3_000));

        JsonObject hours = report("report", recording).getAsJsonObject("hours");

        assertTrue(hours.get("shaft_h").isJsonNull(), hours.toString());
        assertTrue(hours.get("held_h").isJsonNull(), hours.toString());
    }

    @Test
    void theTableOfFindingsMarksWhatIfAndAnAssumedHookupBehindTheOlderColumns() throws IOException {
        Path recording = ShortDay.write(folder, "table.tautlog", day -> {
            day.hold(3, 3_000);
            day.hold(5, 0);
        });

        List<String> day =
                Desk.run("report", recording, "--csv", "-").out().lines().toList();
        List<String> asked = Desk.run("report", recording, "--hookup", "straight", "--csv", "-")
                .out()
                .lines()
                .toList();

        assertTrue(
                day.get(0)
                        .contains(
                                ",detail,what_if,hookup_assumed,at_least,held,has_gap,cut_by_gap,cut_by_end,stays_slack,"
                                        + "clutch,brake,tension_low_n"),
                day.get(0));
        assertTrue(day.get(1).contains(",false,true,false,,false,false,false,,,,"), day.get(1));
        assertTrue(asked.get(1).contains(",true,false,false,,false,false,false,,,,"), asked.get(1));
    }
}
