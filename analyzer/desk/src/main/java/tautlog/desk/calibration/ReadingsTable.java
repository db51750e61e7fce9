package tautlog.desk.calibration;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import tautlog.config.ConfigException;
import tautlog.config.NearestKey;
import tautlog.config.Problems;

/**
 * Reads a table of calibration readings.
 *
 * <pre>
 *   # lines that begin so are remarks
 *   load,unit,counts,direction,run,time
 *   0,kN,4012.4,up,1,2026-05-02T08:00:10Z
 *   10,kN,24018.1,up,1,2026-05-02T08:02:40Z
 *   0,kN,65243.9,shunt,1,…                        the shunt resistor switched on, at the load of a reading before
 * </pre>
 *
 * <p>Columns are parted by a comma, semicolon or tab and stand in any order; {@code direction} (up, down, shunt), {@code run} and
 * {@code time} may be left out. Every problem of the file is told at once.
 */
public final class ReadingsTable {
    private static final List<String> NEEDED = List.of("load", "unit", "counts");
    private static final List<String> KNOWN =
            List.of("load", "unit", "counts", "direction", "run", "time", "sd_counts");
    private static final String BYTE_ORDER_MARK = "\uFEFF";

    private final String file;
    private final Problems problems;
    private final Map<String, Integer> columns = new LinkedHashMap<>();
    private final List<String> unused = new ArrayList<>();

    private ReadingsTable(String file) {
        this.file = file;
        problems = new Problems(file);
    }

    /**
     * The readings in {@code text}.
     *
     * @param file its name, for messages
     * @throws ConfigException with every problem, if there is one
     */
    public static LoadReadings parse(String file, String text) throws ConfigException {
        return new ReadingsTable(file).read(text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text);
    }

    private LoadReadings read(String text) throws ConfigException {
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setDelimiter(delimiter(text))
                .setCommentMarker('#')
                .setTrim(true)
                .setIgnoreSurroundingSpaces(true)
                .get();
        RowReader rows = new RowReader(problems);
        try (CSVParser parser = CSVParser.builder()
                .setReader(new StringReader(text))
                .setFormat(format)
                .get()) {
            for (CSVRecord row : parser) {
                row(rows, row, Math.toIntExact(parser.getCurrentLineNumber()));
            }
        } catch (IOException | UncheckedIOException e) {
            problems.add(1, "", "this is no table of text: " + e.getMessage(), "Part columns by a comma.");
        }
        if (columns.isEmpty() && problems.count() == 0) {
            problems.add(1, "", "the file is empty", "Write a line of names, " + NEEDED + ", and a line a reading.");
        }
        return rows.finish(file, unused);
    }

    private void row(RowReader rows, CSVRecord row, int line) throws ConfigException {
        if (columns.isEmpty()) {
            names(row, line);
            problems.throwIfAny(); // without names no cell can be read
            return;
        }
        rows.row(
                line,
                column -> Optional.ofNullable(columns.get(column))
                        .filter(at -> at < row.size())
                        .map(row::get)
                        .orElse(""));
    }

    private void names(CSVRecord row, int line) {
        for (int i = 0; i < row.size(); i++) {
            String name = row.get(i).toLowerCase(Locale.ROOT);
            if (KNOWN.contains(name)) {
                if (columns.put(name, i) != null) {
                    problems.add(line, name, "there are two columns of this name", "Keep one of them.");
                }
            } else {
                unknown(line, name);
            }
        }
        for (String name : NEEDED) {
            if (!columns.containsKey(name)) {
                problems.add(line, name, "this column is missing", missing(name, row));
            }
        }
    }

    private void unknown(int line, String name) {
        Optional<String> near = NearestKey.to(name, KNOWN);
        if (near.isPresent() && !name.isEmpty() && !columns.containsKey(near.get())) {
            problems.add(line, show(name), "this column is not known here", "Did you mean \"" + near.get() + "\"?");
        } else if (!name.isEmpty()) {
            unused.add(name);
        }
    }

    private static String missing(String name, CSVRecord row) {
        String next = name.equals("unit")
                ? "Write the unit of each load: a load without one is not guessed."
                : "The first line names the columns: load,unit,counts and, if known, direction,run,time.";
        return next + " Found: " + show(String.join(" | ", row.toList()));
    }

    private static char delimiter(String text) {
        String names =
                text.lines().filter(line -> !line.startsWith("#")).findFirst().orElse("");
        return names.contains("\t") ? '\t' : names.contains(";") ? ';' : ',';
    }

    /** What was written, for a message. */
    static String show(String written) {
        return tautlog.config.Reading.show(written);
    }
}
