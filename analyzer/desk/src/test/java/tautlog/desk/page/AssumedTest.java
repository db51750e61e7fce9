package tautlog.desk.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.ShortDay;
import tautlog.sample.HookupSource;

/** Whether a hookup was only assumed is judged by the pulls and findings that rest on it. */
class AssumedTest {
    @TempDir
    Path folder;

    private static String page(Path recording) {
        return Desk.run("report", recording, "--zone", "UTC").out().replaceAll("\\s+", " ");
    }

    private static JsonObject json(Path recording) {
        return JsonParser.parseString(Desk.run("report", recording, "--json").out())
                .getAsJsonObject();
    }

    private static boolean assumed(JsonObject report) {
        return report.getAsJsonArray("hookups")
                .get(0)
                .getAsJsonObject()
                .get("assumed")
                .getAsBoolean();
    }

    private static List<Boolean> pulls(JsonObject report) {
        return StreamSupport.stream(report.getAsJsonArray("pulls").spliterator(), false)
                .map(pull -> pull.getAsJsonObject().get("hookup_assumed").getAsBoolean())
                .toList();
    }

    @Test
    void hookupThatWasNamedBeforeTheFirstPullIsNotAssumed() throws IOException {
        Path recording = ShortDay.write(folder, "named.tautlog", day -> {
            day.hookup("straight", HookupSource.DEFAULT);
            day.hold(5, 0);
            day.hookup("straight", HookupSource.SELECTOR);
            day.hold(3, 20_000);
        });

        assertEquals(List.of(false), pulls(json(recording)));
        assertFalse(assumed(json(recording)));
        assertFalse(page(recording).contains("Assumed:"), page(recording));
        assertTrue(page(recording).contains("said by a person or the switch"), page(recording));
    }

    @Test
    void hookupThatWasNamedAfterSomePullsIsAssumedForThose() throws IOException {
        Path recording = ShortDay.write(folder, "late.tautlog", day -> {
            day.hookup("straight", HookupSource.DEFAULT);
            day.hold(3, 3_000);
            day.hold(5, 0);
            day.hookup("straight", HookupSource.MARK);
            day.hold(3, 3_000);
        });

        assertEquals(List.of(true, false), pulls(json(recording)));
        assertTrue(assumed(json(recording)));
        assertTrue(
                page(recording)
                        .contains(
                                "- Assumed: nobody had said that hookup straight was on for 1 of 2 pulls, from 07:00:00"
                                        + " to 07:00:02."),
                page(recording));
        assertTrue(page(recording).contains("said, but assumed for 1 of 2 pulls"), page(recording));
    }

    @Test
    void hookupThatNobodyEverNamedIsAssumed() throws IOException {
        Path recording = ShortDay.write(folder, "never.tautlog", day -> day.hold(3, 3_000));

        assertTrue(assumed(json(recording)));
        assertTrue(page(recording).contains("- Assumed: nobody said that hookup straight was on."), page(recording));
        assertTrue(page(recording).contains("assumed, nobody said so"), page(recording));
    }
}
