package tautlog.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class ConfigTableTest {
    private static List<Problem> problems(String toml, Consumer<ConfigTable> reading) {
        Problems problems = new Problems("some.toml");
        var wrong = assertThrows(ConfigException.class, () -> {
            ConfigTable root = ConfigTable.parse(problems, toml);
            reading.accept(root);
            root.finish();
            problems.throwIfAny();
        });
        return wrong.problems();
    }

    private static BigDecimal decimal(String number) throws ConfigException {
        Problems problems = new Problems("some.toml");
        Optional<BigDecimal> read =
                ConfigTable.parse(problems, "a = " + number).required("a", Reading.decimal(Range.aboveZero()));
        problems.throwIfAny();
        return read.orElseThrow();
    }

    @Test
    void everyProblemIsToldAtOnceWithItsLineAndKey() {
        String toml = "a = 1\n[t]\nb = \"x\"\n\nc = true\n";

        List<Problem> found = problems(toml, root -> {
            root.required("a", Reading.text());
            ConfigTable table = root.table("t").orElseThrow();
            table.required("b", Reading.whole(1, 5));
            table.required("missing", Reading.force());
            table.optional("c", Reading.flag());
        });

        assertEquals(
                List.of("1 a", "2 t.missing", "3 t.b"),
                found.stream().map(p -> p.line() + " " + p.key()).toList());
    }

    @Test
    void anUnknownKeyIsAnErrorThatOffersTheNearestKnownOne() {
        List<Problem> found = problems("raet_hz = 5\nzzz = 1\n", root -> {
            root.optional("rate_hz", Reading.whole(1, 5));
            root.optional("port", Reading.text());
        });

        assertEquals(
                "some.toml:1: raet_hz: is not a known key.\n  Did you mean rate_hz? Allowed here: port, rate_hz.",
                found.get(0).toString());
        assertEquals("Allowed here: port, rate_hz.", found.get(1).allowed());
    }

    @Test
    void aMessageNamesFileLineKeyWhatWasFoundAndWhatIsAllowed() {
        List<Problem> found = problems("\n\nwll = \"12,5 kN\"", root -> root.optional("wll", Reading.force()));

        assertEquals(
                "some.toml:3: wll: \"12,5 kN\" is not a force.\n  Write the number with a point (\"12.5 kN\"). Allowed: above 0;"
                        + " units N, kN, daN, kgf, kg, t, lbf, lb.",
                found.get(0).toString());
    }

    @Test
    void errorsOfSyntaxAreToldWithTheirLine() {
        List<Problem> found = problems("a = 1\nc = 2\nc = 3\nd = [ 1\n", root -> {});

        assertEquals(3, found.get(0).line());
        assertTrue(found.get(0).found().startsWith("this is not TOML"), found.toString());
    }

    @Test
    void aWrongWordIsAnsweredWithTheNearest() {
        enum Place {
            LINE,
            DEAD_END
        }

        List<Problem> found = problems("at = \"deadend\"", root -> root.optional("at", Reading.oneOf(Place.class)));

        assertEquals(
                "Did you mean \"dead-end\"? Allowed: \"dead-end\", \"line\".",
                found.get(0).allowed());
    }

    @Test
    void aListOfTablesIsNamedByTheKeyThatNamesThem() {
        List<Problem> found = problems("[[gear]]\nid = \"x\"\nn = 0\n[[gear]]\nn = 0\n", root -> {
            for (ConfigTable gear : root.tables("gear", "id")) {
                gear.optional("id", Reading.name());
                gear.required("n", Reading.whole(1, 2));
            }
        });

        assertEquals(
                List.of("gear.x.n", "gear.2.n"),
                found.stream().map(Problem::key).toList());
        assertEquals(List.of(3, 5), found.stream().map(Problem::line).toList());
    }

    @Test
    void aValueOfTheWrongKindIsAProblemForEveryReading() {
        for (Reading<?> reading : List.of(
                Reading.text(),
                Reading.name(),
                Reading.whole(0, 9),
                Reading.decimal(Range.aboveZero()),
                Reading.flag(),
                Reading.date(),
                Reading.instant(),
                Reading.force(),
                Reading.length(),
                Reading.torque(),
                Reading.time("10"))) {
            List<Problem> found = problems("a = [ 1 ]", root -> root.required("a", reading));

            assertTrue(found.get(0).found().startsWith("a list"), found.toString());
        }
    }

    @Test
    void aTableWhereNoneBelongsAndNoneWhereOneBelongsAreProblems() {
        assertEquals("a", problems("a = 1", root -> root.table("a")).get(0).key());
        assertEquals(
                "a", problems("a = 1", root -> root.tables("a", "id")).get(0).key());
        assertEquals(
                "a.1",
                problems("a = [ 1 ]", root -> root.tables("a", "id")).get(0).key());
        assertEquals("a", problems("", root -> root.requiredTable("a")).get(0).key());
    }

    @Test
    void decimalsAreExactlyAsWritten() throws ConfigException {
        for (String number : List.of("0.95", "0.1", "2.0", "1e-7", "123456789.012345", "3", "0.30000000000000004")) {
            assertEquals(0, new BigDecimal(number).compareTo(decimal(number)), number);
        }
        assertThrows(ConfigException.class, () -> decimal("inf"));
        assertThrows(ConfigException.class, () -> decimal("nan"));
    }

    @Property(tries = 500)
    void aDecimalOfUpToFifteenDigitsIsExactlyAsWritten(
            @ForAll @IntRange(min = 1, max = 999_999_999) int digits, @ForAll @IntRange(min = 0, max = 12) int places)
            throws ConfigException {
        BigDecimal written = BigDecimal.valueOf(digits, places);

        assertEquals(0, written.compareTo(decimal(written.toPlainString())));
    }

    @Test
    void aMarkThatSomeEditorsPutFirstIsNoProblem() throws ConfigException {
        ConfigTable root = ConfigTable.parse(new Problems("some.toml"), "\uFEFFa = 1\n");

        assertEquals(Optional.of(1), root.optional("a", Reading.whole(0, 2)));
    }

    @Test
    void bracketsNestedWithoutEndAreAProblem() {
        List<Problem> found = problems("a = " + "[".repeat(100_000), root -> {});

        assertEquals(1, found.get(0).line());
    }
}
