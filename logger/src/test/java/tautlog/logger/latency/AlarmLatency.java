package tautlog.logger.latency;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import tautlog.logger.pty.PseudoTerminal;
import tautlog.logger.wire.BeaconDecoder;
import tautlog.logger.wire.BeaconSink;
import tautlog.logger.wire.BeaconState;
import tautlog.logger.wire.FrameEncoder;
import tautlog.logger.wire.FrameFault;
import tautlog.sample.Instrument;

/**
 * How long the packaged logger takes from a frame with the first sample above 80 % of the limit, or above the limit, to the BEACON
 * frame that says so, at 1,000 samples a second. Measured at the instrument's end of a pseudo-terminal, from just before the frame
 * is written to when the BEACON frame has been read: what the terminal takes and this program's looking every 0.1 ms are in it,
 * so the logger's part is shorter. Linux.
 *
 * <p>From the project's folder, after {@code mvn -DskipTests package}:
 *
 * <pre>
 *   java -cp 'logger/target/tautlogd.jar:logger/target/lib/*' \
 *       logger/src/test/java/tautlog/logger/latency/AlarmLatency.java [alarms, default 2000] [loggers at once, default 4]
 * </pre>
 *
 * <p>Several loggers run at once, each with an instrument of its own: a state is held for half a second or three, so one alone
 * gives only one alarm a second. They keep the processor busier than a board's one logger does.
 */
public final class AlarmLatency {
    private static final int RATE = 1_000;
    private static final int FRAME = 10;
    private static final int TICKS_PER_SAMPLE = 1_000_000 / RATE;
    private static final int SLACK_COUNTS = 100_000;
    private static final int CAUTION_COUNTS = 1_700_000;
    private static final int OVER_COUNTS = 2_200_000;
    /** Every so many alarms one is "over the limit", which is held longest. */
    private static final int ALARMS_AN_OVER = 20;

    private static final List<String> OPTIONS = List.of("-Xmx64m", "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1");
    private static final Duration PATIENCE = Duration.ofSeconds(30);
    private static final long MOST_NANOS = TimeUnit.SECONDS.toNanos(10);
    /** How often this side looks for a BEACON frame: it is found so much later, and the system's own delay of a sleep. */
    private static final long LOOK_NANOS = 100_000;

    private static final long[] BUCKET_MICROS = {100, 200, 300, 500, 700, 1_000, 2_000, 3_000, 5_000, 10_000, 100_000};

    private static final String RIG = """
            schema = 1
            [winch]
            name = "latency"
            rated_pull = "40 kN"
            [[gear]]
            id = "choker"
            kind = "chain"
            wll = "20 kN"
            [[hookup]]
            id = "straight"
            default = true
            items = [ { gear = "choker" } ]
            """;

    private static final String LOGGER = """
            schema = 1
            rig = "rig.toml"
            recordings = "recordings"
            [instrument]
            port = "%s"
            [calibration]
            zero_counts = 0.0
            newtons_per_count = 0.01
            """;

    private AlarmLatency() {}

    /** Measures once and prints the histogram. */
    public static void main(String[] args) throws IOException, InterruptedException {
        int alarms = args.length > 0 ? Integer.parseInt(args[0]) : 2_000;
        int loggers = args.length > 1 ? Integer.parseInt(args[1]) : 4;
        List<Peer> peers = new ArrayList<>();
        List<Thread> threads = new ArrayList<>();
        for (int k = 0; k < loggers; k++) {
            Peer peer = new Peer((alarms + loggers - 1) / loggers);
            peers.add(peer);
            threads.add(new Thread(peer, "instrument " + k));
        }
        threads.forEach(Thread::start);
        for (Thread thread : threads) {
            thread.join();
        }
        print(
                loggers,
                peers.stream()
                        .flatMapToLong(peer -> Arrays.stream(peer.nanos, 0, peer.measured))
                        .sorted()
                        .toArray());
    }

    private static void print(int loggers, long[] nanos) {
        System.out.printf(
                Locale.ROOT, "%d alarms, %d loggers at once, %d samples a second each%n", nanos.length, loggers, RATE);
        System.out.printf(Locale.ROOT, "java %s%n", String.join(" ", OPTIONS));
        int from = 0;
        for (long micros : BUCKET_MICROS) {
            int to = from;
            while (to < nanos.length && nanos[to] < micros * 1_000) {
                to++;
            }
            System.out.printf(
                    Locale.ROOT,
                    "under %7.1f ms  %6d  %7.3f %% so far%n",
                    micros / 1e3,
                    to - from,
                    100.0 * to / nanos.length);
            from = to;
        }
        System.out.printf(Locale.ROOT, "longer            %6d%n", nanos.length - from);
        for (double share : new double[] {0.5, 0.99, 0.999, 1}) {
            int at = Math.max(0, (int) Math.ceil(share * nanos.length) - 1);
            System.out.printf(Locale.ROOT, "%5.1f %% within  %.3f ms%n", 100 * share, nanos[at] / 1e6);
        }
    }

    /** An instrument at a pseudo-terminal, the logger that listens to it, and the times that it took. */
    private static final class Peer implements Runnable {
        private final long[] nanos;
        private final FrameEncoder encoder = new FrameEncoder();
        private final byte[] out = new byte[FrameEncoder.LONGEST_FRAME];
        private final int[] counts = new int[FRAME];
        private final Instrument instrument =
                new Instrument("TL-0001", 1, 0, 1, 1_000_000, RATE * 1_000L, 8_388_607, 6);
        private volatile BeaconState shown = BeaconState.FAULT;
        private volatile long shownNanos;
        private volatile boolean done;
        private int measured;
        private int seq;
        private long number;
        private long dueNanos;

        Peer(int alarms) {
            nanos = new long[alarms];
        }

        @Override
        public void run() {
            try (PseudoTerminal line = PseudoTerminal.open()) {
                Process logger = start(line);
                try {
                    measure(line);
                } finally {
                    done = true;
                    logger.destroy();
                    logger.waitFor();
                }
            } catch (IOException | InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }

        private static Process start(PseudoTerminal line) throws IOException {
            Path folder = Files.createTempDirectory("tautlog-latency");
            Files.writeString(folder.resolve("rig.toml"), RIG);
            Files.writeString(folder.resolve("logger.toml"), LOGGER.formatted(line.portName()));
            List<String> command = new ArrayList<>();
            command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
            command.addAll(OPTIONS);
            command.addAll(List.of(
                    "-jar",
                    Path.of("logger", "target", "tautlogd.jar").toAbsolutePath().toString(),
                    "run",
                    "--config",
                    "logger.toml"));
            return new ProcessBuilder(command)
                    .directory(folder.toFile())
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .redirectError(folder.resolve("run.err").toFile())
                    .start();
        }

        private void measure(PseudoTerminal line) throws IOException, InterruptedException {
            if (!line.waitForReader(PATIENCE)) {
                throw new IOException("the logger does not open its port");
            }
            Thread listener = new Thread(() -> listen(line), "beacon");
            listener.setDaemon(true);
            listener.start();
            dueNanos = System.nanoTime();
            until(line, BeaconState.CLEAR);
            while (measured < nanos.length) {
                boolean over = measured % ALARMS_AN_OVER == ALARMS_AN_OVER - 1;
                alarm(line, over ? OVER_COUNTS : CAUTION_COUNTS, over ? BeaconState.OVER : BeaconState.CAUTION);
                until(line, BeaconState.CLEAR);
            }
        }

        private void alarm(PseudoTerminal line, int tension, BeaconState expected)
                throws IOException, InterruptedException {
            send(line, SLACK_COUNTS);
            long start = send(line, tension);
            while (shown != expected) {
                if (System.nanoTime() - start > MOST_NANOS) {
                    throw new IOException("no alarm within 10 s");
                }
                send(line, tension);
            }
            nanos[measured++] = shownNanos - start;
        }

        private void until(PseudoTerminal line, BeaconState state) throws IOException, InterruptedException {
            long start = System.nanoTime();
            while (shown != state) {
                if (System.nanoTime() - start > MOST_NANOS) {
                    throw new IOException("the beacon is never " + state);
                }
                send(line, SLACK_COUNTS);
            }
        }

        /** One frame when it is due; when its bytes began to be written. */
        private long send(PseudoTerminal line, int tension) throws IOException, InterruptedException {
            TimeUnit.NANOSECONDS.sleep(dueNanos - System.nanoTime());
            dueNanos += 1_000_000_000L / RATE * FRAME;
            long tick = 1_000_000L + number * TICKS_PER_SAMPLE;
            if (number % RATE == 0) {
                write(line, encoder.hello(out, 0, next(), instrument, tick));
            }
            for (int i = 0; i < FRAME; i++) {
                counts[i] = tension + (int) ((number + i) * 7_919 % 17) - 8;
            }
            int n = encoder.tension(out, 0, next(), tick, number, 0, counts, 0, FRAME);
            number += FRAME;
            long start = System.nanoTime();
            write(line, n);
            return start;
        }

        private void write(PseudoTerminal line, int n) throws IOException, InterruptedException {
            line.write(Arrays.copyOf(out, n));
        }

        private int next() {
            seq = seq + 1 & 0xff;
            return seq;
        }

        private void listen(PseudoTerminal line) {
            BeaconDecoder decoder = new BeaconDecoder();
            byte[] in = new byte[64];
            BeaconSink sink = new BeaconSink() {
                @Override
                public void beacon(int seq, BeaconState state) {
                    if (state != shown) {
                        shownNanos = System.nanoTime();
                        shown = state;
                    }
                }

                @Override
                public void rejected(FrameFault fault) {
                    System.err.println("rejected: " + fault);
                }
            };
            try {
                while (!done) {
                    decoder.feed(in, 0, line.read(in), sink);
                    TimeUnit.NANOSECONDS.sleep(LOOK_NANOS);
                }
            } catch (IOException | InterruptedException closed) {
                throw new IllegalStateException(closed);
            }
        }
    }
}
