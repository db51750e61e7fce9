package tautlog.desk.exporting;

import java.io.IOException;
import java.util.List;

/** A kind of file that one table goes into. */
public interface Tables {
    /** Begins the table; closing it ends the file. */
    Cells begin(List<Column> columns) throws IOException;
}
