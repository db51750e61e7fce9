package tautlog.desk.season;

import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import tautlog.desk.fixtures.Desk;

/**
 * The tool's own pass through everything, from the recordings to its page of results, beside single questions to a {@link Engine} over
 * the same samples: one after the other, round by round, the best of each counts. A program, no test: {@code DEVELOPERS.md}, Benchmarks.
 */
final class EngineBench {
    private static final int RECORDINGS = 20;
    /** The tool's code is compiled while it runs. */
    private static final int WARMING = 8;

    private static final int ROUNDS = 7;

    private final List<Path> recordings;
    private final Map<String, Double> bestSeconds = new LinkedHashMap<>();
    private long pulls;

    private EngineBench(List<Path> recordings) {
        this.recordings = recordings;
    }

    /** Takes the first recordings of {@code folder}. */
    static void run(Path folder) throws IOException, SQLException {
        try (var files = Files.list(folder)) {
            new EngineBench(files.filter(file -> file.toString().endsWith(".tautlog"))
                            .sorted(Comparator.naturalOrder())
                            .limit(RECORDINGS)
                            .toList())
                    .run();
        }
    }

    private void run() throws IOException, SQLException {
        Path parquet = Files.createTempDirectory("season-bench").resolve("samples.parquet");
        desk("export", "--parquet", parquet);
        try (Engine engine = new Engine(parquet)) {
            for (int i = 0; i < WARMING; i++) {
                desk("hours", "--json");
            }
            for (int round = 0; round < ROUNDS; round++) {
                round(engine);
            }
            tell(engine.rows());
        } finally {
            Files.deleteIfExists(parquet);
            Files.delete(parquet.getParent());
        }
    }

    private void round(Engine engine) throws SQLException {
        long start = System.nanoTime();
        pulls = pulls(desk("hours", "--json"));
        took("the tool, everything", start);
        for (String question : engine.questions()) {
            start = System.nanoTime();
            long answer = engine.ask(question);
            took(question, start);
            if (question.startsWith("pulls") && answer != pulls) {
                throw new IllegalStateException(
                        question + ": the engine finds " + answer + " pulls, the tool " + pulls);
            }
        }
    }

    private void took(String what, long start) {
        bestSeconds.merge(what, (System.nanoTime() - start) / 1e9, Math::min);
    }

    private static long pulls(String hours) {
        return JsonParser.parseString(hours)
                .getAsJsonObject()
                .getAsJsonObject("total")
                .get("pulls")
                .getAsLong();
    }

    private String desk(Object... words) {
        List<Object> all = new ArrayList<>(List.of(words));
        all.addAll(recordings);
        Desk run = Desk.run(all.toArray());
        if (run.code() != 0) {
            throw new IllegalStateException("ended with " + run.code() + ": " + run.err());
        }
        return run.out();
    }

    private void tell(long rows) {
        double tool = bestSeconds.getOrDefault("the tool, everything", Double.NaN);
        System.out.printf(
                Locale.ROOT,
                "%d recordings, %.1f million samples, %d pulls by the tool and by the engine, best of %d rounds; so many times the tool's time:%n",
                recordings.size(),
                rows / 1e6,
                pulls,
                ROUNDS);
        bestSeconds.forEach((what, seconds) -> System.out.printf(
                Locale.ROOT,
                "  %-48s %8.1f million samples a second %8.2f%n",
                what,
                rows / seconds / 1e6,
                seconds / tool));
    }
}
