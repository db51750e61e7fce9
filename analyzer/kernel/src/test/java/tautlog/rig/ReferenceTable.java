package tautlog.rig;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/** Tables from outside beside the tests; the first line of each names its source. */
final class ReferenceTable {
    private ReferenceTable() {}

    static List<CSVRecord> rows(String name) {
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setCommentMarker('#')
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (Reader in = new InputStreamReader(
                ReferenceTable.class.getResourceAsStream(name + ".csv"), StandardCharsets.UTF_8)) {
            return format.parse(in).getRecords();
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
