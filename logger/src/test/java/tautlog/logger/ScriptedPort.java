package tautlog.logger;

import java.io.ByteArrayOutputStream;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Queue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import tautlog.logger.port.InstrumentLine;
import tautlog.logger.port.InstrumentPort;
import tautlog.logger.port.PortException;

/** A port that brings what a test gives it, and keeps what is written to it. */
public final class ScriptedPort implements InstrumentPort {
    private static final byte[] HANG_UP = new byte[0];

    private final BlockingQueue<byte[]> coming = new LinkedBlockingQueue<>();
    private final ByteArrayOutputStream written = new ByteArrayOutputStream();
    private volatile boolean missing;

    public ScriptedPort bring(byte[] bytes) {
        coming.add(bytes);
        return this;
    }

    public ScriptedPort hangUp() {
        coming.add(HANG_UP);
        return this;
    }

    /** From now on it cannot be opened, or can again. */
    public void missing(boolean isMissing) {
        missing = isMissing;
    }

    /** Whether all that was brought was asked for. */
    public boolean isTaken() {
        return coming.isEmpty();
    }

    /** All bytes written to it. */
    public byte[] written() {
        synchronized (written) {
            return written.toByteArray();
        }
    }

    @Override
    public String name() {
        return "scripted";
    }

    @Override
    public InstrumentLine open() throws PortException {
        if (missing) {
            throw new PortException(PortException.Reason.NOT_THERE, "port scripted is not there");
        }
        return new Line();
    }

    private final class Line implements InstrumentLine {
        private final Queue<byte[]> rest = new ArrayDeque<>();

        @Override
        public int read(byte[] into) {
            try {
                byte[] next = rest.isEmpty() ? coming.poll(20, TimeUnit.MILLISECONDS) : rest.poll();
                if (next == null) {
                    return 0;
                }
                if (next == HANG_UP) {
                    return GONE;
                }
                int n = Math.min(into.length, next.length);
                System.arraycopy(next, 0, into, 0, n);
                if (n < next.length) {
                    rest.add(Arrays.copyOfRange(next, n, next.length));
                }
                return n;
            } catch (InterruptedException stopped) {
                Thread.currentThread().interrupt();
                return GONE;
            }
        }

        @Override
        public void write(byte[] bytes, int n) {
            synchronized (written) {
                written.write(bytes, 0, n);
            }
        }

        @Override
        public void close() {
            rest.clear();
        }
    }
}
