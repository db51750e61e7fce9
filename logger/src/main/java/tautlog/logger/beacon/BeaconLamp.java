package tautlog.logger.beacon;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import tautlog.logger.wire.BeaconState;

/**
 * Which state the beacon shows. Source: {@code firmware-notes/wire.md}, BEACON.
 *
 * <p>Of the states that are true or held the first of over, fault, caution, clear is shown. Over the limit is held for 3 s
 * after it was last true, the others for 0.5 s, so that one sample above the limit is seen. Until anything is known the
 * lamp shows fault. Time is an argument. Safe for threads.
 */
public final class BeaconLamp {
    private static final long OVER_HELD_NANOS = TimeUnit.SECONDS.toNanos(3);
    private static final long OTHERS_HELD_NANOS = TimeUnit.MILLISECONDS.toNanos(500);
    private static final long NEVER = Long.MIN_VALUE;

    /** Why what is recorded is not to be trusted. */
    public enum Trouble {
        /** The disk takes nothing; said by the recorder. */
        REFUSED,
        /** The disk is nearly full; said by the thread that looks at it. */
        NEARLY_FULL,
        /** Both ports' instruments claim the same id; said by the reader. */
        SAME_ID,
        /** The disk is so far behind that samples will be lost; said by the beacon thread. */
        BEHIND
    }

    private final long[] lastTrueNanos = new long[4];
    private BeaconState sensor = BeaconState.FAULT;
    private final Set<Trouble> troubles = EnumSet.noneOf(Trouble.class);
    private boolean driveIsAtWork;
    private BeaconState signalled = BeaconState.FAULT;

    public BeaconLamp() {
        Arrays.fill(lastTrueNanos, NEVER);
    }

    /** What line, sensor and limit say from now on; the reader. */
    public synchronized void sensor(BeaconState state, long nowNanos) {
        touch(nowNanos);
        sensor = state;
        touch(nowNanos);
        signalChange(nowNanos);
    }

    /** The recording is in trouble for this reason from now on, until it is {@link #mended}. Any thread. */
    public synchronized void fault(Trouble trouble, long nowNanos) {
        touch(nowNanos);
        troubles.add(trouble);
        touch(nowNanos);
        signalChange(nowNanos);
    }

    /** This reason is gone from now on. Any thread. */
    public synchronized void mended(Trouble trouble, long nowNanos) {
        touch(nowNanos);
        troubles.remove(trouble);
        signalChange(nowNanos);
    }

    /** A drive is in that is not finished: at least caution from now on, until {@link #driveLeft}. Any thread. */
    public synchronized void driveAtWork(long nowNanos) {
        touch(nowNanos);
        driveIsAtWork = true;
        touch(nowNanos);
        signalChange(nowNanos);
    }

    /** The drive is finished, or pulled out. Any thread. */
    public synchronized void driveLeft(long nowNanos) {
        touch(nowNanos);
        driveIsAtWork = false;
        signalChange(nowNanos);
    }

    /** The state to show at {@code nowNanos}. */
    public synchronized BeaconState shown(long nowNanos) {
        touch(nowNanos);
        return chosen(nowNanos);
    }

    /** Waits until the shown state is another than {@code last}, {@code nanos} at most; the state then. */
    synchronized BeaconState awaitChange(BeaconState last, long nanos) throws InterruptedException {
        long end = System.nanoTime() + nanos;
        long now = System.nanoTime();
        while (now < end && shown(now) == last) {
            // A hold may run out while nothing is said: look again soon.
            TimeUnit.NANOSECONDS.timedWait(this, Math.min(end - now, TimeUnit.MILLISECONDS.toNanos(100)));
            now = System.nanoTime();
        }
        return shown(now);
    }

    private void signalChange(long nowNanos) {
        BeaconState now = chosen(nowNanos);
        if (now != signalled) {
            signalled = now;
            notifyAll();
        }
    }

    private void touch(long nowNanos) {
        lastTrueNanos[sensor.code()] = nowNanos;
        if (!troubles.isEmpty()) {
            lastTrueNanos[BeaconState.FAULT.code()] = nowNanos;
        }
        if (driveIsAtWork) {
            lastTrueNanos[BeaconState.CAUTION.code()] = nowNanos;
        }
    }

    private BeaconState chosen(long nowNanos) {
        if (isHeld(BeaconState.OVER, OVER_HELD_NANOS, nowNanos)) {
            return BeaconState.OVER;
        }
        if (isHeld(BeaconState.FAULT, OTHERS_HELD_NANOS, nowNanos)) {
            return BeaconState.FAULT;
        }
        return isHeld(BeaconState.CAUTION, OTHERS_HELD_NANOS, nowNanos) ? BeaconState.CAUTION : BeaconState.CLEAR;
    }

    private boolean isHeld(BeaconState state, long heldNanos, long nowNanos) {
        long last = lastTrueNanos[state.code()];
        return last != NEVER && nowNanos - last < heldNanos;
    }
}
