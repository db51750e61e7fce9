package tautlog.logger.notes;

import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** A page of {@code firmware-notes}, and its tables. */
record BuilderPage(Path path, List<String> lines) {
    static final Path FOLDER = Path.of(System.getProperty("tautlog.root"), "firmware-notes");

    static BuilderPage read(String name) throws IOException {
        Path path = FOLDER.resolve(name);
        return new BuilderPage(path, Files.readAllLines(path));
    }

    /** The table whose header begins with {@code firstHeader}: its rows, the header first, the line below it left out. */
    List<List<String>> table(String firstHeader) {
        List<List<String>> rows = new ArrayList<>();
        for (String line : lines) {
            if (!line.startsWith("|")) {
                if (!rows.isEmpty()) {
                    break;
                }
            } else if (!rows.isEmpty() || cells(line).get(0).equals(firstHeader)) {
                rows.add(cells(line));
            }
        }
        if (rows.size() < 3) {
            fail(path + " has no table that begins with \"" + firstHeader + "\"");
        }
        rows.remove(1);
        return rows;
    }

    private static List<String> cells(String line) {
        return Arrays.stream(line.substring(1).split("\\|")).map(String::strip).toList();
    }

    /** A cell's number, without thousands' commas, percent sign or degrees. */
    static double number(String cell) {
        return Double.parseDouble(cell.replace(",", "").replace("%", "").strip());
    }
}
