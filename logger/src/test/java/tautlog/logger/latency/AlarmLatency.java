package tautlog.logger.latency;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import tautlog.config.ConfigException;
import tautlog.logger.config.Installation;
import tautlog.logger.port.InstrumentLine;
import tautlog.logger.port.InstrumentPort;
import tautlog.logger.pty.PseudoTerminal;
import tautlog.logger.run.LoggerRun;
import tautlog.logger.wire.BeaconDecoder;
import tautlog.logger.wire.BeaconSink;
import tautlog.logger.wire.BeaconState;
import tautlog.logger.wire.FrameEncoder;
import tautlog.logger.wire.FrameFault;
import tautlog.sample.Instrument;

/**
 * How long the logger takes from a frame with the first sample above 80 % of the limit, or above the limit, to the BEACON frame
 * that says so, at 1,000 samples a second: a histogram. Linux.
 *
 * <p>From the project's folder, after {@code mvn -DskipTests package}:
 *
 * <pre>
 *   java -Xmx64m -Xms8m -XX:+UseSerialGC -XX:TieredStopAtLevel=1 -XX:-UsePerfData -cp 'logger/target/tautlogd.jar:logger/target/lib/*' \
 *       logger/src/test/java/tautlog/logger/latency/AlarmLatency.java inside|terminal [alarms, default 1000] [loggers at once, default 3]
 * </pre>
 *
 * <p>{@code inside}: the whole logger in this program, at a line of its own, from the return of the read that brought the frame's last byte to
 * the call that writes the BEACON frame. {@code terminal}: the packaged logger at a pseudo-terminal, measured at the
 * instrument's end, from just before the frame is written to when the BEACON frame has been read; what the system takes to
 * carry both and this program's looking every 0.1 ms are in it.
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
        boolean inside = args[0].equals("inside");
        int alarms = args.length > 1 ? Integer.parseInt(args[1]) : 1_000;
        int loggers = args.length > 2 ? Integer.parseInt(args[2]) : 3;
        List<Peer> peers = new ArrayList<>();
        List<Thread> threads = new ArrayList<>();
        for (int k = 0; k < loggers; k++) {
            Peer peer = new Peer(inside, (alarms + loggers - 1) / loggers);
            peers.add(peer);
            threads.add(new Thread(peer, "instrument " + k));
        }
        threads.forEach(Thread::start);
        for (Thread thread : threads) {
            thread.join();
        }
        print(
                inside ? "inside" : "terminal, java " + String.join(" ", OPTIONS),
                loggers,
                peers.stream()
                        .flatMapToLong(peer -> Arrays.stream(peer.nanos, 0, peer.measured))
                        .sorted()
                        .toArray());
        System.exit(0); // loggers inside may still be closing
    }

    private static void print(String how, int loggers, long[] nanos) {
        System.out.printf(
                Locale.ROOT, "%d alarms, %d loggers at once, %d samples a second each%n", nanos.length, loggers, RATE);
        System.out.println(how);
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

    /** What lies between an instrument and a logger. */
    private interface Wire extends AutoCloseable {
        /** @param counts whether the time counts from this frame on */
        void send(byte[] frame, boolean counts) throws IOException, InterruptedException;

        /** From when the time of the last frame that counts is taken. */
        long startNanos();

        @Override
        void close();
    }

    /** Hears BEACON frames and when they came. */
    private static final class Lamp implements BeaconSink {
        private final BeaconDecoder decoder = new BeaconDecoder();
        private volatile BeaconState shown = BeaconState.FAULT;
        private volatile long shownNanos;
        private long nowNanos;

        void heard(long nanos, byte[] bytes, int n) {
            nowNanos = nanos;
            decoder.feed(bytes, 0, n, this);
        }

        @Override
        public void beacon(int seq, BeaconState state) {
            if (state != shown) {
                shownNanos = nowNanos;
                shown = state;
            }
        }

        @Override
        public void rejected(FrameFault fault) {
            System.err.println("rejected: " + fault);
        }
    }

    private static Path folder(String port) throws IOException {
        Path folder = Files.createTempDirectory("tautlog-latency");
        Files.writeString(folder.resolve("rig.toml"), RIG);
        Files.writeString(folder.resolve("logger.toml"), LOGGER.formatted(port));
        return folder;
    }

    /** The logger in this program, at a line without a system between. */
    private static final class Inside implements Wire, InstrumentPort, InstrumentLine {
        private record Frame(byte[] bytes, boolean counts) {}

        private final BlockingQueue<Frame> frames = new LinkedBlockingQueue<>();
        private final Lamp lamp;
        private final LoggerRun logger;
        private volatile long startNanos;

        Inside(Lamp lamp) throws IOException {
            this.lamp = lamp;
            try {
                Installation installation = Installation.load(folder("inside").resolve("logger.toml"));
                logger = new LoggerRun(installation, this, LoggerRun.Until.STOPPED, "latency");
            } catch (ConfigException wrong) {
                throw new IOException(wrong);
            }
            Thread main = new Thread(() -> {
                try {
                    logger.run();
                } catch (IOException | InterruptedException ended) {
                    System.err.println("the logger ended: " + ended.getMessage());
                }
            });
            main.setDaemon(true);
            main.start();
        }

        @Override
        public void send(byte[] frame, boolean counts) {
            frames.add(new Frame(frame, counts));
        }

        @Override
        public long startNanos() {
            return startNanos;
        }

        @Override
        public InstrumentLine open() {
            return this;
        }

        @Override
        public String name() {
            return "inside";
        }

        @Override
        public int read(byte[] into) {
            try {
                Frame frame = frames.poll(100, TimeUnit.MILLISECONDS);
                if (frame == null) {
                    return 0;
                }
                System.arraycopy(frame.bytes, 0, into, 0, frame.bytes.length);
                if (frame.counts) {
                    startNanos = System.nanoTime();
                }
                return frame.bytes.length;
            } catch (InterruptedException stopped) {
                return GONE;
            }
        }

        @Override
        public void write(byte[] bytes, int n) {
            lamp.heard(System.nanoTime(), bytes, n);
        }

        @Override
        public void close() {
            logger.stop();
        }
    }

    /** The packaged logger at a pseudo-terminal. */
    private static final class Terminal implements Wire {
        private final PseudoTerminal line = PseudoTerminal.open();
        private final Process logger;
        private volatile boolean done;
        private long startNanos;

        Terminal(Lamp lamp) throws IOException, InterruptedException {
            logger = start(line);
            if (!line.waitForReader(PATIENCE)) {
                throw new IOException("the logger does not open its port");
            }
            Thread listener = new Thread(() -> listen(lamp), "beacon");
            listener.setDaemon(true);
            listener.start();
        }

        private static Process start(PseudoTerminal line) throws IOException {
            Path folder = folder(line.portName());
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

        private void listen(Lamp lamp) {
            byte[] in = new byte[64];
            try {
                while (!done) {
                    int n = line.read(in);
                    lamp.heard(System.nanoTime(), in, n);
                    TimeUnit.NANOSECONDS.sleep(LOOK_NANOS);
                }
            } catch (IOException | InterruptedException closed) {
                throw new IllegalStateException(closed);
            }
        }

        @Override
        public void send(byte[] frame, boolean counts) throws IOException, InterruptedException {
            if (counts) {
                startNanos = System.nanoTime();
            }
            line.write(frame);
        }

        @Override
        public long startNanos() {
            return startNanos;
        }

        @Override
        public void close() {
            done = true;
            logger.destroy();
            logger.onExit().join();
            line.close();
        }
    }

    /** An instrument, and the times that its logger took. */
    private static final class Peer implements Runnable {
        private final boolean inside;
        private final Lamp lamp = new Lamp();
        private final long[] nanos;
        private final FrameEncoder encoder = new FrameEncoder();
        private final byte[] out = new byte[FrameEncoder.LONGEST_FRAME];
        private final int[] counts = new int[FRAME];
        private final Instrument instrument =
                new Instrument("TL-0001", 1, 0, 1, 1_000_000, RATE * 1_000L, 8_388_607, 6);
        private int measured;
        private int seq;
        private long number;
        private long dueNanos;

        Peer(boolean inside, int alarms) {
            this.inside = inside;
            nanos = new long[alarms];
        }

        @Override
        public void run() {
            try (Wire wire = inside ? new Inside(lamp) : new Terminal(lamp)) {
                measure(wire);
            } catch (IOException | InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }

        private void measure(Wire line) throws IOException, InterruptedException {
            dueNanos = System.nanoTime();
            until(line, BeaconState.CLEAR);
            while (measured < nanos.length) {
                boolean over = measured % ALARMS_AN_OVER == ALARMS_AN_OVER - 1;
                alarm(line, over ? OVER_COUNTS : CAUTION_COUNTS, over ? BeaconState.OVER : BeaconState.CAUTION);
                until(line, BeaconState.CLEAR);
            }
        }

        private void alarm(Wire line, int tension, BeaconState expected) throws IOException, InterruptedException {
            send(line, SLACK_COUNTS, false);
            send(line, tension, true);
            long sent = System.nanoTime();
            while (lamp.shown != expected) {
                if (System.nanoTime() - sent > MOST_NANOS) {
                    throw new IOException("no alarm within 10 s");
                }
                send(line, tension, false);
            }
            nanos[measured++] = lamp.shownNanos - line.startNanos();
        }

        private void until(Wire line, BeaconState state) throws IOException, InterruptedException {
            long start = System.nanoTime();
            while (lamp.shown != state) {
                if (System.nanoTime() - start > MOST_NANOS) {
                    throw new IOException("the beacon is never " + state);
                }
                send(line, SLACK_COUNTS, false);
            }
        }

        /** One frame when it is due. */
        private void send(Wire line, int tension, boolean counted) throws IOException, InterruptedException {
            TimeUnit.NANOSECONDS.sleep(dueNanos - System.nanoTime());
            dueNanos += 1_000_000_000L / RATE * FRAME;
            long tick = 1_000_000L + number * TICKS_PER_SAMPLE;
            if (number % RATE == 0) {
                line.send(Arrays.copyOf(out, encoder.hello(out, 0, next(), instrument, tick)), false);
            }
            for (int i = 0; i < FRAME; i++) {
                counts[i] = tension + (int) ((number + i) * 7_919 % 17) - 8;
            }
            int n = encoder.tension(out, 0, next(), tick, number, 0, counts, 0, FRAME);
            number += FRAME;
            line.send(Arrays.copyOf(out, n), counted);
        }

        private int next() {
            seq = seq + 1 & 0xff;
            return seq;
        }
    }
}
