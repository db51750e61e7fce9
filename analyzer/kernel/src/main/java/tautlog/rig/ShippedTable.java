package tautlog.rig;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import tautlog.quantity.Length;

/** A published table that lies beside the classes: cells separated by commas, lines with {@code #} are comments. */
final class ShippedTable {
    private final List<String[]> rows;

    private ShippedTable(List<String[]> rows) {
        this.rows = rows;
    }

    static ShippedTable named(String resource) {
        try (InputStream in = ShippedTable.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException("the program's own table " + resource + " is missing from its jar");
            }
            return new ShippedTable(new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#") && !line.isBlank())
                    .map(line -> line.split(","))
                    .toList());
        } catch (IOException unreadable) {
            throw new UncheckedIOException("the program's own table " + resource, unreadable);
        }
    }

    List<String[]> rows() {
        return rows;
    }

    /** The rows whose first cell is {@code key}, without it. */
    ShippedTable under(String key) {
        return new ShippedTable(rows.stream()
                .filter(row -> row[0].equals(key))
                .map(row -> Arrays.copyOfRange(row, 1, row.length))
                .toList());
    }

    /** Third cell of the row of this size: inches in the first cell, nominal millimetres in the second. */
    Optional<BigDecimal> bySize(Length size) {
        return rows.stream()
                .filter(row -> size.sameAs(inches(row[0])) || size.sameAs(Length.parse(row[1] + " mm")))
                .map(row -> new BigDecimal(row[2]))
                .findFirst();
    }

    /** All sizes, as a message lists them. */
    String sizes() {
        return rows.stream().map(row -> row[0] + " in (" + row[1] + " mm)").collect(Collectors.joining(", "));
    }

    static Length inches(String cell) {
        return Length.parse(cell + " in");
    }
}
