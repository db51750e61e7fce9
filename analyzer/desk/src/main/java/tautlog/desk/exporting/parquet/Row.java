package tautlog.desk.exporting.parquet;

import java.util.Arrays;

/** One row on its way to the file; made once and filled again and again. */
final class Row {
    /** Whole numbers, flags as 0 and 1, microseconds since 1970. */
    final long[] wholes;

    final double[] numbers;
    final String[] words;
    final boolean[] isKnown;

    Row(int columns) {
        wholes = new long[columns];
        numbers = new double[columns];
        words = new String[columns];
        Arrays.fill(words, "");
        isKnown = new boolean[columns];
    }
}
