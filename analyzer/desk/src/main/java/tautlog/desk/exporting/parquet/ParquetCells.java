package tautlog.desk.exporting.parquet;

import java.io.IOException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.apache.parquet.hadoop.ParquetWriter;
import tautlog.desk.exporting.Cells;
import tautlog.desk.exporting.Column;

/** Gathers one row at a time for the library. */
final class ParquetCells implements Cells {
    private final ParquetWriter<Row> writer;
    private final Row row;
    private final int columns;
    private int at;

    ParquetCells(ParquetWriter<Row> writer, List<Column> columns) {
        this.writer = writer;
        this.columns = columns.size();
        row = new Row(this.columns);
    }

    @Override
    public void whole(long value) {
        row.wholes[at] = value;
        known();
    }

    @Override
    public void number(double value) {
        row.numbers[at] = value;
        known();
    }

    @Override
    public void degrees(double value) {
        number(value);
    }

    @Override
    public void time(Instant value) {
        whole(ChronoUnit.MICROS.between(Instant.EPOCH, value));
    }

    @Override
    public void word(String value) {
        row.words[at] = value;
        known();
    }

    @Override
    public void flag(boolean value) {
        whole(value ? 1 : 0);
    }

    @Override
    public void unknown() {
        row.isKnown[at++] = false;
    }

    private void known() {
        row.isKnown[at++] = true;
    }

    /** @throws IllegalStateException if the row has not as many cells as there are columns */
    @Override
    public void endRow() throws IOException {
        if (at != columns) {
            throw new IllegalStateException("a row has " + columns + " cells, was given " + at);
        }
        at = 0;
        writer.write(row);
    }

    @Override
    public void close() throws IOException {
        writer.close();
    }
}
