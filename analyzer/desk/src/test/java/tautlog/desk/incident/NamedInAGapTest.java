package tautlog.desk.incident;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.ShortDay;
import tautlog.sample.HookupSource;

/** A hookup that was named while readings are missing holds from the next reading that is there. */
class NamedInAGapTest {
    @TempDir
    Path folder;

    private static List<String> hookups(Path recording, String at) {
        Desk run = Desk.run("incident", recording, "--outing", "1", "--at", at, "--json");
        assertEquals("", run.err().replaceAll("damaged: .*\\R", ""));
        JsonArray turns = JsonParser.parseString(run.out())
                .getAsJsonObject()
                .getAsJsonObject("outing")
                .getAsJsonArray("hookups_on");
        return turns.asList().stream().map(NamedInAGapTest::turn).toList();
    }

    private static String turn(JsonElement turn) {
        return turn.getAsJsonObject().get("hookup").getAsString() + " from "
                + turn.getAsJsonObject().get("from").getAsString().substring(14);
    }

    @Test
    void whereReadingsNeverCame() throws IOException {
        Path recording = ShortDay.write(folder, "gap.tautlog", day -> {
            day.hookup("straight", HookupSource.SELECTOR);
            day.hold(5, 3_000);
            day.lose(2);
            day.hookup("straight", HookupSource.MARK);
            day.lose(1);
            day.hookup("round-the-corner", HookupSource.MARK);
            day.lose(1);
            day.hold(5, 3_000);
        });

        assertEquals(
                List.of("straight from 00:00.000000Z", "round-the-corner from 00:09.000000Z"),
                hookups(recording, "6s"));
    }

    @Test
    void whereABlockOfReadingsIsDamaged() throws Exception {
        Path recording = ShortDay.write(folder, "damaged.tautlog", day -> {
            day.hookup("straight", HookupSource.SELECTOR);
            day.hold(34, 3_000);
            day.hookup("round-the-corner", HookupSource.MARK);
            day.hold(40, 3_000);
        });
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + recording);
                Statement statement = connection.createStatement()) {
            statement.executeUpdate("UPDATE evidence SET block = zeroblob(length(block)) WHERE seq ="
                    + " (SELECT seq FROM evidence WHERE kind = 2 ORDER BY seq LIMIT 1 OFFSET 1)");
        }

        List<String> hookups = hookups(recording, "70s");

        assertTrue(hookups.get(hookups.size() - 1).startsWith("round-the-corner from 01:05"), hookups.toString());
    }
}
