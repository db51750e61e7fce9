package tautlog.config;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.tomlj.Toml;
import org.tomlj.TomlArray;
import org.tomlj.TomlParseError;
import org.tomlj.TomlParseResult;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/**
 * A table of a file, read key by key. A value that is missing or wrong becomes a problem and comes back empty, and reading
 * goes on, so that all problems are told at once. Not thread-safe.
 *
 * <p>Ask for every key there is, call {@link #finish} on the root, then {@link Problems#throwIfAny}; only then build.
 */
public final class ConfigTable {
    /** Some editors put it first. */
    private static final String BYTE_ORDER_MARK = "\uFEFF";

    private final Problems problems;
    private final TomlTable table;
    private final String path;
    private final int line;
    private final Set<String> known = new LinkedHashSet<>();
    private final List<ConfigTable> inner = new ArrayList<>();

    private ConfigTable(Problems problems, TomlTable table, String path, int line) {
        this.problems = problems;
        this.table = table;
        this.path = path;
        this.line = line;
    }

    /**
     * The root of a file.
     *
     * @throws ConfigException with all errors of syntax, if {@code toml} is no TOML
     */
    public static ConfigTable parse(Problems problems, String toml) throws ConfigException {
        TomlParseResult result = parsed(problems, toml);
        for (TomlParseError error : result.errors()) {
            problems.add(
                    Math.max(1, error.position().line()),
                    "",
                    "this is not TOML: " + Reading.show(error).replace("\"", ""),
                    "Column " + error.position().column() + ". Texts stand in quotes: key = \"text\".");
        }
        problems.throwIfAny();
        return new ConfigTable(problems, result, "", 1);
    }

    private static TomlParseResult parsed(Problems problems, String toml) throws ConfigException {
        try {
            return Toml.parse(toml.startsWith(BYTE_ORDER_MARK) ? toml.substring(1) : toml);
        } catch (StackOverflowError tooDeep) {
            problems.add(1, "", "brackets are nested too deep", "Write one level of brackets.");
            problems.throwIfAny();
            throw tooDeep;
        }
    }

    /** Dotted path of this table, empty for the root. */
    public String path() {
        return path;
    }

    /** Line at which this table starts. */
    public int line() {
        return line;
    }

    /** Line of {@code key}; of the table when the key is not there. */
    public int line(String key) {
        TomlPosition position = table.inputPositionOf(List.of(key));
        return position == null ? line : position.line();
    }

    /** Whether {@code key} is there, right or wrong; from now on it is a known key. */
    public boolean has(String key) {
        known.add(key);
        return table.get(List.of(key)) != null;
    }

    /** The value of {@code key}; empty when it is not there, or wrong (then a problem is noted). */
    public <T> Optional<T> optional(String key, Reading<T> reading) {
        known.add(key);
        Object written = table.get(List.of(key));
        if (written == null) {
            return Optional.empty();
        }
        try {
            return Optional.of(reading.read(written));
        } catch (Refusal refusal) {
            problem(key, refusal.found(), refusal.allowed());
            return Optional.empty();
        }
    }

    /** The value of {@code key}; empty when it is wrong or not there, and a problem is noted. */
    public <T> Optional<T> required(String key, Reading<T> reading) {
        if (!has(key)) {
            problem(key, "is missing", "Write " + key + " = …: " + reading.allowed() + ".");
        }
        return optional(key, reading);
    }

    /** The value of {@code key}; {@code otherwise} when it is not there, or wrong (then a problem is noted). */
    public <T> T or(String key, Reading<T> reading, T otherwise) {
        return optional(key, reading).orElse(otherwise);
    }

    /** The table under {@code key}; empty when it is not there, or no table (then a problem is noted). */
    public Optional<ConfigTable> table(String key) {
        known.add(key);
        Object written = table.get(List.of(key));
        if (written == null) {
            return Optional.empty();
        }
        if (written instanceof TomlTable found) {
            return Optional.of(remember(new ConfigTable(problems, found, pathOf(key), line(key))));
        }
        problem(key, Reading.show(written) + " is not a table", "Write [" + pathOf(key) + "] and its keys below.");
        return Optional.empty();
    }

    /**
     * The tables of the list under {@code key}: {@code [[key]]} or {@code key = [ { … } ]}; none when it is not there. What
     * is no table is a problem and left out.
     *
     * @param nameKey the key of the list's tables that names one in messages; without it they are numbered from 1
     */
    public List<ConfigTable> tables(String key, String nameKey) {
        known.add(key);
        Object written = table.get(List.of(key));
        List<ConfigTable> found = new ArrayList<>();
        if (written instanceof TomlArray list) {
            for (int i = 0; i < list.size(); i++) {
                addTable(found, key, nameKey, list, i);
            }
        } else if (written != null) {
            problem(
                    key,
                    Reading.show(written) + " is not a list of tables",
                    "Write [[" + pathOf(key) + "]] before each.");
        }
        return found;
    }

    private void addTable(List<ConfigTable> found, String key, String nameKey, TomlArray list, int index) {
        int at = list.inputPositionOf(index).line();
        if (list.get(index) instanceof TomlTable element) {
            String name = element.get(List.of(nameKey)) instanceof String text
                    ? Reading.show(text).replace("\"", "")
                    : Integer.toString(index + 1);
            found.add(remember(new ConfigTable(problems, element, pathOf(key) + "." + name, at)));
        } else {
            problems.add(
                    at,
                    pathOf(key) + "." + (index + 1),
                    Reading.show(list.get(index)) + " is not a table",
                    "Write { " + nameKey + " = … }.");
        }
    }

    /** The table under {@code key}; when it is not there, or no table, a problem is noted. */
    public Optional<ConfigTable> requiredTable(String key) {
        if (!has(key)) {
            problem(key, "is missing", "Write [" + pathOf(key) + "] and its keys below.");
        }
        return table(key);
    }

    /** The text under {@code key} as it is written; empty when it is not there or no text. Notes nothing. */
    public Optional<String> writtenText(String key) {
        return table.get(List.of(key)) instanceof String text ? Optional.of(text) : Optional.empty();
    }

    /** How many problems the whole file has so far: the same before and after reading something means that it was right. */
    public int problemsSoFar() {
        return problems.count();
    }

    /** Takes every key of this table as known: what it may hold cannot be told, because of a problem already noted. */
    public void knowEverything() {
        known.addAll(table.keySet());
    }

    /** Notes a problem with the value of {@code key}; see {@link Problem}. */
    public void problem(String key, String found, String allowed) {
        problems.add(line(key), pathOf(key), found, allowed);
    }

    /** Notes every key of this table and of those it gave out that nobody asked for. */
    public void finish() {
        for (String key : table.keySet()) {
            if (!known.contains(key)) {
                problem(key, "is not a known key", unknownKeyAdvice(key));
            }
        }
        inner.forEach(ConfigTable::finish);
    }

    private String unknownKeyAdvice(String key) {
        String meant = NearestKey.to(key, known)
                .map(nearest -> "Did you mean " + nearest + "? ")
                .orElse("");
        return meant + "Allowed here: " + String.join(", ", new TreeSet<>(known)) + ".";
    }

    private ConfigTable remember(ConfigTable child) {
        inner.add(child);
        return child;
    }

    private String pathOf(String key) {
        String shown = Reading.show(key).replace("\"", "");
        return path.isEmpty() ? shown : path + "." + shown;
    }
}
