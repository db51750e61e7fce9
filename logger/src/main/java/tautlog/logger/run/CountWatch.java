package tautlog.logger.run;

import java.math.BigDecimal;
import java.util.ArrayDeque;
import java.util.Optional;
import java.util.Queue;
import org.jspecify.annotations.Nullable;
import tautlog.logger.beacon.BeaconLamp;
import tautlog.logger.beacon.BeaconSender;
import tautlog.logger.calibrate.SteadyCounts;
import tautlog.logger.calibrate.SteadyMean;
import tautlog.logger.config.LoggerConfig;
import tautlog.logger.instrument.InstrumentFeed;
import tautlog.logger.port.InstrumentLine;
import tautlog.logger.port.InstrumentPort;
import tautlog.logger.port.PortException;
import tautlog.logger.wire.OutingSink;
import tautlog.sample.Evidence;
import tautlog.sample.Instrument;
import tautlog.sample.QuietEvidence;

/**
 * The counts of an instrument's line, for calibrating it. Records nothing and sends no beacon: no limit is watched, and an
 * instrument that hears nothing shows fault.
 */
public final class CountWatch implements AutoCloseable {
    private final BigDecimal overSeconds;
    private final InstrumentFeed feed;
    private final LineReader reader;
    private final Thread thread;
    private final Queue<SteadyMean> found = new ArrayDeque<>();
    private @Nullable SteadyCounts steady;
    private boolean unusable;
    private boolean ended;

    /**
     * Opens the port and begins to read.
     *
     * @param config tells what stands at the port
     * @param overSeconds how long a load must be steady, and is averaged
     */
    public CountWatch(LoggerConfig config, InstrumentPort port, BigDecimal overSeconds) throws PortException {
        this.overSeconds = overSeconds;
        // its thread is never started: nothing is sent
        BeaconSender silent = new BeaconSender(new BeaconLamp(), () -> 0);
        feed = Feeds.tension(config, new Outings(), silent);
        reader = new LineReader(port, LineReader.AtHangUp.END, new Listener());
        InstrumentLine line = port.open();
        thread = new Thread(() -> read(line), "reader");
        thread.setDaemon(true);
        thread.start();
    }

    private void read(InstrumentLine line) {
        try {
            reader.run(line);
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        } finally {
            end();
        }
    }

    private synchronized void noneCanCome() {
        notifyAll();
    }

    private synchronized void end() {
        ended = true;
        notifyAll();
    }

    /**
     * Waits for the first steady window of samples that come from now on.
     *
     * @return empty when none came within {@code millis}, or none can come: the line is gone, the order of the words is unproven;
     *     {@link #hindrance} says why
     */
    public synchronized Optional<SteadyMean> await(long millis) throws InterruptedException {
        found.clear();
        unusable = false;
        SteadyCounts counts = steady;
        if (counts != null) {
            counts.clear();
        }
        long end = System.nanoTime() + millis * 1_000_000;
        long left = millis;
        while (found.isEmpty() && !ended && feed.unproven().isEmpty() && left > 0) {
            wait(left);
            left = (end - System.nanoTime()) / 1_000_000;
        }
        return Optional.ofNullable(found.poll());
    }

    /** Why {@link #await} found nothing. */
    public synchronized String hindrance() {
        if (ended) {
            return "the port is gone";
        }
        if (unusable) {
            return "the bridge is open or the converter at its end stop";
        }
        if (feed.unproven().isPresent()) {
            return feed.unproven().get();
        }
        return steady == null ? "no instrument is heard: see `tautlogd listen`" : steady.hindrance();
    }

    @Override
    public void close() {
        reader.stop();
    }

    private synchronized void tension(Instrument instrument, long number, int flags, int[] counts, int from, int n) {
        SteadyCounts window = steady;
        if (window == null) {
            window = new SteadyCounts(instrument.rate().samplesIn(overSeconds));
            steady = window;
        }
        for (int i = 0; i < n; i++) {
            int count = counts[from + i];
            if ((flags & Evidence.FLAG_OPEN_BRIDGE) != 0 || instrument.isAtEndStop(count)) {
                unusable = true;
                window.clear();
            } else {
                window.add(number + i, count).ifPresent(this::found);
            }
        }
    }

    private void found(SteadyMean mean) {
        if (found.isEmpty()) {
            found.add(mean);
            notifyAll();
        }
    }

    private final class Listener implements LineReader.Listener {
        @Override
        public void opened(InstrumentLine line) {
            feed.opened(line);
        }

        @Override
        public void bytes(byte[] bytes, int n) {
            feed.bytes(System.nanoTime(), bytes, n);
            if (feed.unproven().isPresent()) {
                noneCanCome();
            }
        }

        @Override
        public void gone() {
            feed.gone();
            end();
        }

        @Override
        public void waiting() {
            // the first hang-up ends it
        }
    }

    private final class Outings implements OutingSink {
        @Override
        public Evidence begin(Instrument instrument, long firstTick) {
            return new QuietEvidence() {
                @Override
                public void tension(long number, long tick, int flags, int[] counts, int from, int n) {
                    CountWatch.this.tension(instrument, number, flags, counts, from, n);
                }
            };
        }

        @Override
        public void firstSample(long tick) {}

        @Override
        public void now(long tick) {}

        @Override
        public void selector(long atNumber, int position) {}

        @Override
        public void ended(long lastTick) {}
    }
}
