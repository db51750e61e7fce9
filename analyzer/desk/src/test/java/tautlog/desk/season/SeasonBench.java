package tautlog.desk.season;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import tautlog.desk.fixtures.Desk;

/**
 * A season end to end in one process, warm: {@code hours} with every detector, rainflow, meters, gear and driveline, from the recordings
 * to its page of results. Beside it, in the same run, the plain search for the greatest count in memory, which is the least that anybody
 * could do, and easier questions to a general engine. A program, no test: {@code DEVELOPERS.md}, Benchmarks.
 */
public final class SeasonBench {
    private static final int SCANNED = 100_000_000;
    private static final OperatingSystemMXBean SYSTEM =
            (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

    private SeasonBench() {}

    /** @param arguments folder of the season, made where it is not there; recordings; minutes of each; samples of slack line between pulls; rig; runs */
    public static void main(String[] arguments) throws IOException, SQLException {
        Path folder = Files.createDirectories(Path.of(arguments[0]));
        int recordings = Integer.parseInt(arguments[1]);
        double minutes = Double.parseDouble(arguments[2]);
        Season.make(
                folder, recordings, minutes, Integer.parseInt(arguments[3]), Files.readString(Path.of(arguments[4])));
        double samples = recordings * minutes * 60 * Season.HERTZ;
        say(
                "%d recordings, %.0f h, %.0f million samples, %.3f bytes a sample",
                recordings, recordings * minutes / 60, samples / 1e6, Season.bytes(folder) / samples);
        Scan scan = new Scan();
        for (int run = 0; run < Integer.parseInt(arguments[5]); run++) {
            double one = scan.millionASecond(1);
            double two = scan.millionASecond(2);
            season("season", folder, samples, two);
            say("  scan for the greatest: %.0f million a second on one thread, %.0f on two", one, two);
        }
        if (forget(folder)) {
            season("season, from the disk", folder, samples, scan.millionASecond(2));
        } else {
            say("season, from the disk: skipped, there is no dd that knows nocache");
        }
        EngineBench.run(folder);
    }

    /** Lets the system drop what it holds of the recordings in memory, as far as GNU dd can make it. */
    private static boolean forget(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.toList()) {
                Process dd = new ProcessBuilder("dd", "if=" + file, "iflag=nocache", "count=0", "status=none").start();
                if (dd.waitFor() != 0) {
                    return false;
                }
            }
            return true;
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void season(String name, Path folder, double samples, double scan) throws IOException {
        pools().forEach(MemoryPoolMXBean::resetPeakUsage);
        long processor = SYSTEM.getProcessCpuTime();
        double seconds = seconds(() -> run("hours", folder, "--json"));
        double processorSeconds = (SYSTEM.getProcessCpuTime() - processor) / 1e9;
        long heap = pools().stream()
                .mapToLong(pool -> pool.getPeakUsage().getUsed())
                .sum();
        double rate = samples / seconds / 1e6;
        say(
                "%s: %.2f s (%.2f s of processor), %.0f million samples a second, the scan on two threads %.1f times as fast; heap at most %d MB, resident at most %d MB",
                name, seconds, processorSeconds, rate, scan / rate, heap >> 20, residentKilobytes() >> 10);
    }

    private static List<MemoryPoolMXBean> pools() {
        return ManagementFactory.getMemoryPoolMXBeans().stream()
                .filter(pool -> pool.getType() == MemoryType.HEAP)
                .toList();
    }

    /** The most that the process ever had resident; 0 where the system does not tell. */
    private static long residentKilobytes() throws IOException {
        Path status = Path.of("/proc/self/status");
        return Files.exists(status)
                ? Files.readAllLines(status).stream()
                        .filter(line -> line.startsWith("VmHWM:"))
                        .mapToLong(line -> Long.parseLong(line.replaceAll("[^0-9]", "")))
                        .sum()
                : 0;
    }

    private static void run(Object... words) {
        Desk run = Desk.run(words);
        if (run.code() != 0) {
            throw new IllegalStateException("ended with " + run.code() + ": " + run.err());
        }
    }

    /** What is timed. */
    private interface Work<E extends Exception> {
        void run() throws E;
    }

    private static <E extends Exception> double seconds(Work<E> work) throws E {
        long start = System.nanoTime();
        work.run();
        return (System.nanoTime() - start) / 1e9;
    }

    private static void say(String format, Object... values) {
        System.out.printf(Locale.ROOT, format + "%n", values);
    }

    /** The plain search for the greatest of many counts in memory. */
    private static final class Scan {
        private final int[] counts =
                new SplittableRandom(1).ints(SCANNED / 10, 0, 20_000).toArray();

        double millionASecond(int threads) {
            double best = 0;
            for (int pass = 0; pass < 5; pass++) {
                double seconds =
                        seconds(() -> IntStream.range(0, threads).parallel().forEach(thread -> greatest()));
                best = Math.max(best, (double) threads * SCANNED / seconds / 1e6);
            }
            return best;
        }

        private void greatest() {
            for (int i = 0; i < SCANNED / counts.length; i++) {
                int greatest = Integer.MIN_VALUE;
                for (int count : counts) {
                    greatest = Math.max(greatest, count);
                }
                if (greatest < 0) {
                    throw new IllegalStateException(Arrays.toString(counts));
                }
            }
        }
    }
}
