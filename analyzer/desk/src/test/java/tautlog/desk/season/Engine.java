package tautlog.desk.season;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A general engine (DuckDB) on two threads that is asked what the tool finds in passing, each question written as one would: from a
 * Parquet file that the tool exported, and from a table of the three columns that are asked for in the engine's own memory.
 *
 * <p>Half a newton a count, 500 samples a second, as {@link Season} writes. Source of the pulls: {@code FINDINGS.md}, Pull.
 */
final class Engine implements AutoCloseable {
    private static final String LIMIT = "SELECT count(*) + max(counts) FROM %s WHERE counts > 12000";

    /** The sum of squares of 64 bins' counts: one number to compare, and nothing can be left out. */
    private static final String HISTOGRAM = """
            SELECT sum(n * n) FROM (
              SELECT least(63, greatest(0, counts >> 9)) AS bin, count(*)::HUGEINT AS n FROM %s GROUP BY bin)""";

    /**
     * Opens with 0.3 s at 1500 N or more, closes with 3 s below half of it. Stretches of either kind, by number less row number; then
     * those that open a pull with no other open before.
     */
    private static final String PULLS = """
            WITH opening AS (
              SELECT outing, min(number) AS since FROM (
                SELECT outing, number, number - row_number() OVER (PARTITION BY outing ORDER BY number) AS stretch
                FROM %1$s WHERE counts >= 3000)
              GROUP BY outing, stretch HAVING count(*) >= 150),
            closing AS (
              SELECT outing, min(number) + 1499 AS since FROM (
                SELECT outing, number, number - row_number() OVER (PARTITION BY outing ORDER BY number) AS stretch
                FROM %1$s WHERE counts < 1500)
              GROUP BY outing, stretch HAVING count(*) >= 1500),
            events AS (
              SELECT outing, since, true AS opens FROM opening UNION ALL SELECT outing, since, false FROM closing)
            SELECT count(*) FROM (
              SELECT opens, lag(opens) OVER (PARTITION BY outing ORDER BY since) AS before FROM events)
            WHERE opens AND before IS NOT true""";

    /** The same by one window: where a sample lies in another zone than the one before, a stretch begins. */
    private static final String PULLS_BY_EDGES = """
            WITH zones AS (
              SELECT outing, number, CASE WHEN counts >= 3000 THEN 2 WHEN counts >= 1500 THEN 1 ELSE 0 END AS zone FROM %1$s),
            edges AS (
              SELECT outing, number, zone FROM zones
              QUALIFY zone IS DISTINCT FROM lag(zone) OVER (PARTITION BY outing ORDER BY number)),
            stretches AS (
              SELECT outing, number, zone, coalesce(
                lead(number) OVER (PARTITION BY outing ORDER BY number),
                (SELECT max(number) + 1 FROM %1$s AS whole WHERE whole.outing = edges.outing)) - number AS n FROM edges),
            events AS (
              SELECT outing, number AS since, zone = 2 AS opens FROM stretches
              WHERE (zone = 2 AND n >= 150) OR (zone = 0 AND n >= 1500))
            SELECT count(*) FROM (
              SELECT opens, lag(opens) OVER (PARTITION BY outing ORDER BY since) AS before FROM events)
            WHERE opens AND before IS NOT true""";

    private final Connection connection;
    private final Statement statement;
    private final Map<String, String> questions = new LinkedHashMap<>();

    /** @param parquet the exported samples */
    Engine(Path parquet) throws SQLException {
        connection = DriverManager.getConnection("jdbc:duckdb:");
        statement = connection.createStatement();
        statement.execute("SET threads = 2");
        statement.execute(
                "CREATE TABLE samples AS SELECT outing, number, counts FROM '" + parquet + "' ORDER BY outing, number");
        for (Map.Entry<String, String> source :
                Map.of("Parquet", "'" + parquet + "'", "table", "samples").entrySet()) {
            questions.put("count and greatest over a limit, " + source.getKey(), LIMIT.formatted(source.getValue()));
            questions.put("histogram of 64 bins, " + source.getKey(), HISTOGRAM.formatted(source.getValue()));
            questions.put("pulls by row number, " + source.getKey(), PULLS.formatted(source.getValue()));
            questions.put("pulls by edges, " + source.getKey(), PULLS_BY_EDGES.formatted(source.getValue()));
        }
    }

    /** What can be asked. */
    Iterable<String> questions() {
        return questions.keySet();
    }

    long rows() throws SQLException {
        return number("SELECT count(*) FROM samples");
    }

    /** The answer, a number; that of the pulls is how many. */
    long ask(String question) throws SQLException {
        return number(questions.getOrDefault(question, ""));
    }

    private long number(String sql) throws SQLException {
        try (ResultSet rows = statement.executeQuery(sql)) {
            rows.next();
            return rows.getLong(1);
        }
    }

    @Override
    public void close() throws SQLException {
        statement.close();
        connection.close();
    }
}
