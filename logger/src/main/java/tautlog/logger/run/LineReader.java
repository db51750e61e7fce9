package tautlog.logger.run;

import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tautlog.logger.port.InstrumentLine;
import tautlog.logger.port.InstrumentPort;
import tautlog.logger.port.PortException;

/**
 * The reader thread's work: bytes from the line to a {@link Listener}; a line that vanishes is opened again.
 *
 * <p>A vanished port is said once, then counted. Every opening asks for a fresh port, because a name that is a link may
 * lead elsewhere by then.
 */
final class LineReader {
    private static final Logger LOG = LoggerFactory.getLogger(LineReader.class);
    private static final int CHUNK = 4_096;
    private static final long LOOK_MILLIS = 100;
    /** Chosen: a read takes 0.1 s; opening a port that has just come back may take the system seconds. */
    private static final long HUNG_NANOS = TimeUnit.SECONDS.toNanos(15);

    private static final int MOST_SAID = 10;

    /** What is done with what the line brings; all on the reader thread. */
    interface Listener {
        /** A line was opened. */
        void opened(InstrumentLine line);

        /** {@code n} bytes came; 0 when none came for 0.1 s. */
        void bytes(byte[] bytes, int n);

        /** The line is gone; {@link #waiting} follows until there is another. */
        void gone();

        /** There is no line; called about every 0.1 s. */
        void waiting();
    }

    /** What to do when the other end closes. */
    enum AtHangUp {
        REOPEN,
        END
    }

    private final InstrumentPort port;
    private final AtHangUp atHangUp;
    private final Listener listener;
    private final byte[] chunk = new byte[CHUNK];
    private volatile boolean stopping;
    private volatile boolean open;
    private volatile long turnNanos = System.nanoTime();
    private final AtomicLong hangUps = new AtomicLong();

    LineReader(InstrumentPort port, AtHangUp atHangUp, Listener listener) {
        this.port = port;
        this.atHangUp = atHangUp;
        this.listener = listener;
    }

    /** Asks {@link #run} to return; it does within about 0.1 s. */
    void stop() {
        stopping = true;
    }

    boolean isOpen() {
        return open;
    }

    long hangUps() {
        return hangUps.get();
    }

    /** Whether it has neither read nor looked for the port for long; any thread. */
    boolean isHung(long nowNanos) {
        return nowNanos - turnNanos > HUNG_NANOS;
    }

    /** As {@link #run}, for a port that may not be there yet: it is tried until it is. */
    void runWhenThere() throws InterruptedException {
        Optional<InstrumentLine> first = reopened();
        if (first.isPresent()) {
            run(first.get());
        }
    }

    /** Reads {@code first}, then what is opened after it, until stopped or, if so chosen, until the first hang-up. */
    void run(InstrumentLine first) throws InterruptedException {
        InstrumentLine line = first;
        while (true) {
            read(line);
            if (stopping || atHangUp == AtHangUp.END) {
                return;
            }
            long goneNanos = System.nanoTime();
            LOG.warn("port {} is gone; it is tried again until it is back", port.name());
            Optional<InstrumentLine> next = reopened();
            if (next.isEmpty()) {
                return;
            }
            line = next.get();
            LOG.info("port {} is back after_s={} hang_ups={}", port.name(), secondsSince(goneNanos), hangUps.get());
        }
    }

    private static long secondsSince(long nanos) {
        return TimeUnit.NANOSECONDS.toSeconds(System.nanoTime() - nanos);
    }

    private void read(InstrumentLine line) {
        listener.opened(line);
        open = true;
        try (line) {
            int n = 0;
            while (n != InstrumentLine.GONE && !stopping) {
                turnNanos = System.nanoTime();
                n = line.read(chunk);
                if (n >= 0) {
                    listener.bytes(chunk, n);
                }
            }
            if (n == InstrumentLine.GONE && !stopping) {
                hangUps.incrementAndGet();
            }
        } finally {
            open = false;
            listener.gone();
        }
    }

    private Optional<InstrumentLine> reopened() throws InterruptedException {
        BackOff backOff = new BackOff();
        Set<String> said = new HashSet<>();
        while (!stopping) {
            pause(backOff.nextMillis());
            try {
                return Optional.of(port.open());
            } catch (PortException stillGone) {
                tell(stillGone, said);
            }
        }
        return Optional.empty();
    }

    /** That it is not there was said; why one that is there is not taken is said once. */
    private static void tell(PortException stillGone, Set<String> said) {
        String words = String.valueOf(stillGone.getMessage());
        if (stillGone.reason() == PortException.Reason.REFUSED && said.size() < MOST_SAID && said.add(words)) {
            LOG.warn("{}", words);
        } else {
            LOG.debug("{}", words);
        }
    }

    private void pause(long millis) throws InterruptedException {
        long end = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(millis);
        while (!stopping && System.nanoTime() < end) {
            turnNanos = System.nanoTime();
            Thread.sleep(Math.min(millis, LOOK_MILLIS));
            listener.waiting();
        }
    }
}
