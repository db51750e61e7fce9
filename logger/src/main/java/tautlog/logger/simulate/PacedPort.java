package tautlog.logger.simulate;

import java.io.IOException;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tautlog.logger.pty.PseudoTerminal;
import tautlog.logger.simulate.instrument.ByteSink;
import tautlog.logger.wire.BeaconDecoder;
import tautlog.logger.wire.BeaconSink;
import tautlog.logger.wire.BeaconState;
import tautlog.logger.wire.FrameFault;

/** Sends the bytes when their time has come, and hears what the logger's beacon says in between. */
final class PacedPort implements ByteSink, BeaconSink {
    private static final double PROGRESS_SECONDS = 60;

    private final PseudoTerminal terminal;
    private final int pace;
    private final @Nullable PrintWriter progress;
    private final BeaconDecoder decoder = new BeaconDecoder();
    private final byte[] heard = new byte[256];
    private final List<Truth.Beacon> beacons = new ArrayList<>();
    private final long startNanos = System.nanoTime();
    private @Nullable BeaconState state;
    private double nowSeconds;
    private double nextProgress;
    private long rejected;
    private long unheard;

    PacedPort(PseudoTerminal terminal, int pace, @Nullable PrintWriter progress) {
        this.terminal = terminal;
        this.pace = pace;
        this.progress = progress;
    }

    /** The port failed; carried through the simulation, which knows no ports. */
    static final class Broken extends RuntimeException {
        private static final long serialVersionUID = 1;
        private final IOException reason;

        Broken(IOException reason) {
            super(reason);
            this.reason = reason;
        }

        IOException reason() {
            return reason;
        }
    }

    /** The thread was interrupted; carried through the simulation likewise. */
    static final class Interrupted extends RuntimeException {
        private static final long serialVersionUID = 1;
        private final InterruptedException reason;

        Interrupted(InterruptedException reason) {
            super(reason);
            this.reason = reason;
        }

        InterruptedException reason() {
            return reason;
        }
    }

    @Override
    public void send(byte[] bytes, int n, double seconds) {
        try {
            waitUntil(seconds);
            if (!terminal.write(bytes, 0, n)) {
                unheard += n;
            }
            listen(seconds);
            tellProgress(seconds);
        } catch (IOException e) {
            throw new Broken(e);
        } catch (InterruptedException e) {
            throw new Interrupted(e);
        }
    }

    private void waitUntil(double seconds) throws InterruptedException {
        long dueNanos = startNanos + (long) (seconds * 1e9 / pace);
        long early = dueNanos - System.nanoTime();
        if (early > 0) {
            Thread.sleep(early / 1_000_000, (int) (early % 1_000_000));
        }
    }

    void listen(double seconds) throws IOException {
        nowSeconds = seconds;
        int n = terminal.read(heard);
        while (n > 0) {
            decoder.feed(heard, 0, n, this);
            n = terminal.read(heard);
        }
    }

    private void tellProgress(double seconds) {
        if (progress != null && seconds >= nextProgress) {
            nextProgress = seconds + PROGRESS_SECONDS;
            progress.print("\rsimulate: " + Math.round(seconds) + " s ");
            progress.flush();
        }
    }

    @Override
    public void beacon(int seq, BeaconState said) {
        if (said != state) {
            state = said;
            beacons.add(new Truth.Beacon(nowSeconds, said.name()));
        }
    }

    @Override
    public void rejected(FrameFault fault) {
        rejected++;
    }

    List<Truth.Beacon> beacons() {
        return List.copyOf(beacons);
    }

    long beaconFramesRejected() {
        return rejected;
    }

    /** Bytes sent while nobody had the port open. */
    long bytesUnheard() {
        return unheard;
    }
}
