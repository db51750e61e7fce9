package tautlog.desk.importing;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * Reads a table of readings: a comma, semicolon or tab between the columns, with or without a line of column names;
 * {@code .gz} is unpacked on the way.
 */
final class ReadingsFile {
    /** Some programs put it before a text in UTF-8. */
    private static final int BYTE_ORDER_MARK = 0xFEFF;

    private final Path file;
    private final ZoneId zone;

    ReadingsFile(Path file, ZoneId zone) {
        this.file = file;
        this.zone = zone;
    }

    /**
     * All readings of two columns.
     *
     * @param time name or number (from 1) of the column of times
     * @param force the same for the forces
     * @throws ImportException if a column is not there, or the readings cannot be one history
     */
    Readings read(String time, String force) throws IOException, ImportException {
        try (BufferedReader reader = open();
                CSVParser rows = parser(reader)) {
            return read(rows, time, force);
        }
    }

    private Readings read(CSVParser rows, String time, String force) throws ImportException {
        ReadingsCollector collector = new ReadingsCollector(file.toString(), zone);
        Optional<Columns> columns = Optional.empty();
        for (CSVRecord row : rows) {
            if (columns.isEmpty()) {
                mustBeText(row.toList());
                columns = Optional.of(columns(row.toList(), time, force));
                if (columns.get().named(row.toList())) {
                    continue;
                }
            }
            Columns at = columns.get();
            int cells = cells(row);
            if (cells > at.width()) {
                collector.leaveOut(
                        rows.getCurrentLineNumber(),
                        "it has " + cells + " columns, the first line has " + at.width()
                                + " (a comma for a decimal point?)");
                continue;
            }
            collector.row(rows.getCurrentLineNumber(), cell(row, at.time()), cell(row, at.force()));
        }
        return collector.finish();
    }

    private void mustBeText(List<String> firstRow) throws ImportException {
        boolean isText = String.join(" ", firstRow)
                .chars()
                .noneMatch(c -> c == '\uFFFD' || (Character.isISOControl(c) && !Character.isWhitespace(c)));
        if (!isText) {
            throw ImportException.content(file + ": is no table of text in UTF-8.\n  Give the readings as the indicator"
                    + " wrote them, columns parted by a comma, semicolon or tab.");
        }
    }

    /** How many cells there are, empty ones at the end not counted. */
    private static int cells(CSVRecord row) {
        int cells = row.size();
        while (cells > 0 && row.get(cells - 1).isEmpty()) {
            cells--;
        }
        return cells;
    }

    private static String cell(CSVRecord row, int column) {
        return column < row.size() ? row.get(column) : "";
    }

    private BufferedReader open() throws IOException {
        InputStream in = Files.newInputStream(file);
        boolean packed = file.getFileName().toString().endsWith(".gz");
        BufferedReader reader = new BufferedReader(
                new InputStreamReader(packed ? new GZIPInputStream(in) : in, StandardCharsets.UTF_8), 1 << 16);
        reader.mark(1);
        if (reader.read() != BYTE_ORDER_MARK) {
            reader.reset();
        }
        return reader;
    }

    private static CSVParser parser(BufferedReader reader) throws IOException {
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setDelimiter(delimiter(reader))
                .setTrim(true)
                .setIgnoreSurroundingSpaces(true)
                .get();
        return CSVParser.builder().setReader(reader).setFormat(format).get();
    }

    /** A tab or a semicolon in the first line means that columns are parted by it. */
    private static char delimiter(BufferedReader reader) throws IOException {
        reader.mark(1 << 14);
        char[] start = new char[1 << 13];
        int n = Math.max(0, reader.read(start));
        reader.reset();
        String line = new String(start, 0, n).lines().findFirst().orElse("");
        return line.contains("\t") ? '\t' : line.contains(";") ? ';' : ',';
    }

    private Columns columns(List<String> firstRow, String time, String force) throws ImportException {
        return new Columns(column(firstRow, "--time", time), column(firstRow, "--force", force), firstRow.size());
    }

    private int column(List<String> firstRow, String option, String wanted) throws ImportException {
        if (wanted.matches("[0-9]{1,4}")) { // a number first: in a file without names a cell may hold just that
            int number = Integer.parseInt(wanted);
            if (number >= 1 && number <= firstRow.size()) {
                return number - 1;
            }
        }
        int byName = firstRow.indexOf(wanted);
        if (byName >= 0) {
            return byName;
        }
        throw ImportException.usage(option + ": there is no column \"" + wanted + "\" in " + file
                + ".\n  Its first line: " + String.join(" | ", firstRow)
                + "\n  Give a name from that line, or a number from 1 to " + firstRow.size() + ".");
    }

    private record Columns(int time, int force, int width) {
        /** Whether the first row holds names: the force's cell is no number. */
        boolean named(List<String> firstRow) {
            return ReadingsCollector.number(firstRow.get(force)).isEmpty();
        }
    }
}
