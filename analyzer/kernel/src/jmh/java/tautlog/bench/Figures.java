package tautlog.bench;

import java.io.IOException;
import java.sql.SQLException;
import java.util.Collection;
import java.util.Locale;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import tautlog.detect.NumbaBench;
import tautlog.recording.RecordingSize;

/**
 * Measures every figure of speed and size that we speak of, and prints them together at the end.
 *
 * <p>Arguments: a regular expression for the benchmarks to run (default: all), or {@code NumbaBench} for the comparison with compiled Python, {@code RecordingSize} for bytes a sample alone. Rates depend on the machine and on who else uses
 * it; the ratio to the plain scan, measured in the same run, does so less.
 */
public final class Figures {
    private static final String SCAN = "DetectBench.scan";

    private Figures() {}

    public static void main(String[] arguments)
            throws RunnerException, IOException, SQLException, InterruptedException {
        String which = arguments.length > 0 ? arguments[0] : "tautlog";
        if (which.equals("NumbaBench")) {
            NumbaBench.main(new String[0]);
            return;
        }
        if (which.equals("RecordingSize")) {
            RecordingSize.main(new String[0]);
            return;
        }
        Collection<RunResult> results =
                new Runner(new OptionsBuilder().include(which).build()).run();
        System.out.printf(
                "%nMillion samples a second on one core, with the half-width of the 99.9 %% interval, and the best second:%n");
        for (RunResult result : results) {
            System.out.println(line(result));
        }
        ratios(results);
        System.out.printf("%nBytes a sample, 500 Hz:%n");
        RecordingSize.main(new String[0]);
    }

    private static String line(RunResult result) {
        return String.format(
                Locale.ROOT,
                "  %-40s %8.1f ± %-6.1f %8.1f",
                name(result),
                result.getPrimaryResult().getScore(),
                result.getPrimaryResult().getScoreError(),
                best(result));
    }

    /** The best of the seconds measured: what the machine gives when nobody else uses it. */
    private static double best(RunResult result) {
        return result.getPrimaryResult().getStatistics().getMax();
    }

    /** The benchmark and its parameters. */
    private static String name(RunResult result) {
        StringBuilder name =
                new StringBuilder(result.getParams().getBenchmark().replaceFirst("^tautlog\\.[a-z]+\\.", ""));
        for (String key : result.getParams().getParamsKeys()) {
            name.append(' ').append(key).append('=').append(result.getParams().getParam(key));
        }
        return name.toString();
    }

    private static void ratios(Collection<RunResult> results) {
        results.stream().filter(result -> name(result).equals(SCAN)).findAny().ifPresent(scan -> {
            System.out.printf(
                    "%nThe plain scan for the greatest count is so many times as fast, best second against best:%n");
            results.stream()
                    .filter(result -> result != scan)
                    .forEach(result ->
                            System.out.printf(Locale.ROOT, "  %-40s %8.1f%n", name(result), best(scan) / best(result)));
        });
    }
}
