package tautlog.logger.beacon;

import java.util.concurrent.TimeUnit;
import tautlog.logger.wire.BeaconState;

/**
 * The beacon thread's work: sends the lamp's state to the instrument on every change and every second.
 *
 * <p>Only this thread writes to a line. It may wait in there as long as the instrument reads nothing; closing the line
 * frees it. What it sends next is the state of that moment, never a queue of old ones.
 */
public final class BeaconSender implements Runnable {
    private static final long EVERY_NANOS = TimeUnit.SECONDS.toNanos(1);

    /** Where a state goes, as a BEACON frame. */
    @FunctionalInterface
    public interface Sink {
        /** A line that is not there: the state goes nowhere. */
        Sink NOWHERE = state -> {};

        void send(BeaconState state);
    }

    private final BeaconLamp lamp;
    private volatile Sink sink = Sink.NOWHERE;

    public BeaconSender(BeaconLamp lamp) {
        this.lamp = lamp;
    }

    /** Another line was opened, or none is left. */
    public void sendTo(Sink sink) {
        this.sink = sink;
    }

    /** Runs until interrupted. */
    @Override
    public void run() {
        try {
            BeaconState last = lamp.shown(System.nanoTime());
            while (true) {
                sink.send(last);
                last = lamp.awaitChange(last, EVERY_NANOS);
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }
}
