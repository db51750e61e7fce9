package tautlog.logger.beacon;

import java.util.concurrent.TimeUnit;
import java.util.function.DoubleSupplier;
import tautlog.logger.beacon.BeaconLamp.Trouble;
import tautlog.logger.wire.BeaconState;

/**
 * The beacon thread's work: sends the lamp's state to the instrument on every change and every second, and looks each time whether
 * the disk has fallen behind: a commit that hangs says nothing by itself.
 *
 * <p>Only this thread writes to a line. It may wait in there as long as the instrument reads nothing; closing the line
 * frees it. What it sends next is the state of that moment, never a queue of old ones.
 */
public final class BeaconSender implements Runnable {
    private static final long EVERY_NANOS = TimeUnit.SECONDS.toNanos(1);

    /** Chosen: an ordinary commit starts within half a second; a slow card's flush of seconds is not yet a fault. */
    private static final double MOST_LAG_SECONDS = 5;

    /** Where a state goes, as a BEACON frame. */
    @FunctionalInterface
    public interface Sink {
        /** A line that is not there: the state goes nowhere. */
        Sink NOWHERE = state -> {};

        void send(BeaconState state);
    }

    private final BeaconLamp lamp;
    private final DoubleSupplier lagSeconds;
    private volatile Sink sink = Sink.NOWHERE;

    /** @param lagSeconds age of the oldest event that the disk has not; asked about every second, must not wait for the disk */
    public BeaconSender(BeaconLamp lamp, DoubleSupplier lagSeconds) {
        this.lamp = lamp;
        this.lagSeconds = lagSeconds;
    }

    /** Another line was opened, or none is left. */
    public void sendTo(Sink sink) {
        this.sink = sink;
    }

    /** Runs until interrupted. */
    @Override
    public void run() {
        try {
            BeaconState last = looked();
            while (true) {
                sink.send(last);
                lamp.awaitChange(last, EVERY_NANOS);
                last = looked();
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    private BeaconState looked() {
        long now = System.nanoTime();
        if (lagSeconds.getAsDouble() > MOST_LAG_SECONDS) {
            lamp.fault(Trouble.BEHIND, now);
        } else {
            lamp.mended(Trouble.BEHIND, now);
        }
        return lamp.shown(now);
    }
}
