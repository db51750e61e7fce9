package tautlog.desk.exporting;

import java.io.Closeable;
import java.io.IOException;
import java.time.Instant;

/** Takes a table cell by cell, in the order of its columns, and row by row. Not thread-safe. */
public interface Cells extends Closeable {
    /** For a column of {@link Column.Type#INT} or {@link Column.Type#LONG}. */
    void whole(long value);

    /** @param value finite */
    void number(double value);

    /** A latitude or longitude, finite, in a column of numbers. */
    void degrees(double value);

    void time(Instant value);

    /** A word without commas, quotes or line feeds; empty when there is nothing to say. */
    void word(String value);

    void flag(boolean value);

    /** Nothing is known. */
    void unknown();

    /** The row has all of its cells. */
    void endRow() throws IOException;
}
