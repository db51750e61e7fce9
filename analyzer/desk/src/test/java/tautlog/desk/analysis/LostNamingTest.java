package tautlog.desk.analysis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tautlog.desk.fixtures.Desk;
import tautlog.desk.fixtures.SampleDay;
import tautlog.desk.fixtures.ShortDay;
import tautlog.sample.HookupSource;

/** Two stretches in which what may have named the hookup is damaged; between them one was assumed on the day. */
class LostNamingTest {
    private static final String FIRST = "32.7 to 69.9";
    private static final String SECOND = "98.1 to 114.9";

    @TempDir
    Path folder;

    private Path named;

    @BeforeEach
    void recordAndDamage() throws Exception {
        named = ShortDay.write(folder, "named.tautlog", day -> {
            day.hookup("straight", HookupSource.SELECTOR);
            day.hold(36, 3_000);
            day.hookup("straight", HookupSource.MARK); // in the second block of readings, from 32.7 s on
            day.hold(34, 3_000);
            day.hookup("straight", HookupSource.DEFAULT); // in the third, from 65.4 s on
            day.hold(10, 0);
            day.hold(10, 3_000);
            day.hold(14, 0);
            day.hookup("straight", HookupSource.MARK); // in the fourth, from 98.1 s on
            day.hold(10, 3_000);
        });
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + named)) {
            assertEquals(
                    2,
                    connection
                            .createStatement()
                            .executeUpdate("UPDATE evidence SET block = zeroblob(length(block)) WHERE kind = 4 AND"
                                    + " span IN (2, 4)"));
        }
    }

    private List<String> told(Object... arguments) {
        Object[] all = Arrays.copyOf(arguments, arguments.length + 1);
        all[arguments.length] = "--json";
        List<String> told = new ArrayList<>();
        JsonParser.parseString(Desk.run(all).out())
                .getAsJsonObject()
                .getAsJsonArray("hookups_not_known")
                .forEach(one -> told.add(seconds(one.getAsJsonObject(), "outing_s") + " to "
                        + seconds(one.getAsJsonObject(), "outing_end_s")));
        return told;
    }

    private static double seconds(JsonObject stretch, String key) {
        return Math.floor(stretch.get(key).getAsDouble() * 10 + 1e-6) / 10;
    }

    private static String at(int seconds) {
        return SampleDay.START.plusSeconds(seconds).toString();
    }

    @Test
    void areToldApart() {
        assertEquals(List.of(FIRST, SECOND), told("report", named));
    }

    @Test
    void areNotToldOutsideTheTimeAskedFor() {
        assertEquals(List.of(FIRST), told("report", named, "--to", at(80)));
        assertEquals(List.of(SECOND), told("report", named, "--from", at(75)));
        assertEquals(List.of(FIRST, SECOND), told("report", named, "--from", at(50), "--to", at(100)));

        Desk between = Desk.run("report", named, "--from", at(75), "--to", at(95));

        assertEquals(List.of(), told("report", named, "--from", at(75), "--to", at(95)));
        assertFalse(between.out().contains("Hookup not known"), between.out());
        assertFalse(between.out().contains("nobody is known"), between.out());
        assertTrue(between.out().contains("nobody said"), between.out());
    }

    @Test
    void areNotToldOfAnotherMoment() {
        assertEquals(List.of(FIRST), told("incident", named, "--at", at(40), "--around", "5s"));
        assertEquals(List.of(), told("incident", named, "--at", at(85), "--around", "5s"));
        assertEquals(List.of(SECOND), told("incident", named, "--at", at(110), "--around", "5s"));
    }
}
