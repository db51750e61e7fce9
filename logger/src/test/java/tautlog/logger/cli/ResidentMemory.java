package tautlog.logger.cli;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;

/** How much memory a logger holds, looked at a few times a second for as long as it is watched. */
final class ResidentMemory implements AutoCloseable {
    private static final long LOOK_MILLIS = 250;

    private final StartedDaemon daemon;
    private final List<Long> kilobytes = Collections.synchronizedList(new ArrayList<>());
    private final Thread thread;

    private ResidentMemory(StartedDaemon daemon) {
        this.daemon = daemon;
        thread = new Thread(this::look, "resident memory");
        thread.setDaemon(true);
    }

    static ResidentMemory watch(StartedDaemon daemon) {
        ResidentMemory watch = new ResidentMemory(daemon);
        watch.thread.start();
        return watch;
    }

    private void look() {
        try {
            while (true) {
                long now = daemon.residentKilobytes();
                if (now > 0) {
                    kilobytes.add(now);
                }
                Thread.sleep(LOOK_MILLIS);
            }
        } catch (IOException | InterruptedException over) {
            return; // it has ended, or nobody watches any more
        }
    }

    /** The first quarter is warming up; of the rest, the greatest of the first and that of the second half, in megabytes. */
    record Halves(double firstMegabytes, double secondMegabytes) {
        static Halves of(List<Long> kilobytes) {
            int from = kilobytes.size() / 4;
            int middle = from + (kilobytes.size() - from) / 2;
            return new Halves(
                    greatest(kilobytes.subList(from, middle)), greatest(kilobytes.subList(middle, kilobytes.size())));
        }

        private static double greatest(List<Long> kilobytes) {
            return kilobytes.stream().mapToLong(Long::longValue).max().orElseThrow() / 1_024.0;
        }

        double moreMegabytes() {
            return secondMegabytes - firstMegabytes;
        }

        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT, "%.1f MB in the first half, %.1f in the second", firstMegabytes, secondMegabytes);
        }
    }

    Halves halves() {
        return Halves.of(List.copyOf(kilobytes));
    }

    @Override
    public void close() {
        thread.interrupt();
    }
}
