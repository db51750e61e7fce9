package tautlog.recording;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import org.sqlite.SQLiteErrorCode;

/** Another program that has a file open through SQLite, and says how each statement went; never waits for a lock. */
final class OtherProgram implements AutoCloseable {
    static final String DONE = "done";
    static final String BUSY = "code " + SQLiteErrorCode.SQLITE_BUSY.code;
    static final String MAY_NOT_WRITE = "code " + SQLiteErrorCode.SQLITE_READONLY.code;

    private final Process process;
    private final BufferedReader answers;

    OtherProgram(Path file) throws IOException {
        process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        OtherProgram.class.getName(),
                        file.toString())
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        answers = process.inputReader();
    }

    String does(String sql) throws IOException {
        process.outputWriter().append(sql).append('\n').flush();
        return String.valueOf(answers.readLine());
    }

    @Override
    public void close() {
        process.destroyForcibly();
    }

    /** The other program. */
    public static void main(String[] args) throws IOException, SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + args[0]);
                BufferedReader asked = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8))) {
            answer(connection, "PRAGMA busy_timeout = 0");
            for (String sql = asked.readLine(); sql != null; sql = asked.readLine()) {
                System.out.println(answer(connection, sql));
            }
        }
    }

    private static String answer(Connection connection, String sql) {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
            return DONE;
        } catch (SQLException e) {
            return "code " + RecordingFile.primary(e);
        }
    }
}
