package tautlog.desk.exporting;

import java.io.IOException;
import java.io.Writer;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import tautlog.desk.report.JsonFields;

/** Text with commas and one line of names; an empty cell is not known. */
public final class CsvTables implements Tables {
    private final Writer out;

    /** @param out stays open */
    public CsvTables(Writer out) {
        this.out = out;
    }

    @Override
    public Cells begin(List<Column> columns) throws IOException {
        out.write(columns.stream().map(Column::name).collect(Collectors.joining(",")) + "\n");
        return new Rows(out);
    }

    private static final class Rows implements Cells {
        private final Writer out;
        private final StringBuilder row = new StringBuilder(160);

        Rows(Writer out) {
            this.out = out;
        }

        @Override
        public void whole(long value) {
            row.append(value).append(',');
        }

        @Override
        public void number(double value) {
            row.append(JsonFields.number(value)).append(',');
        }

        @Override
        public void degrees(double value) {
            row.append(String.format(Locale.ROOT, "%.7f", value)).append(',');
        }

        @Override
        public void time(Instant value) {
            row.append(JsonFields.time(value)).append(',');
        }

        @Override
        public void word(String value) {
            row.append(value).append(',');
        }

        @Override
        public void flag(boolean value) {
            row.append(value).append(',');
        }

        @Override
        public void unknown() {
            row.append(',');
        }

        @Override
        public void endRow() throws IOException {
            row.setCharAt(row.length() - 1, '\n');
            out.append(row);
            row.setLength(0);
        }

        @Override
        public void close() throws IOException {
            out.flush();
        }
    }
}
