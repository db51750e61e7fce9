package tautlog.logger.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import tautlog.logger.SmallInstrument;
import tautlog.logger.pty.PseudoTerminal;
import tautlog.logger.wire.BeaconDecoder;
import tautlog.logger.wire.BeaconSink;
import tautlog.logger.wire.BeaconState;
import tautlog.logger.wire.FrameFault;

/** An instrument that pulls 12 kN on a limit of 20 kN in real time, and the beacon on its side of the line. */
final class SteadyFeed implements BeaconSink {
    private static final long FRAME_MILLIS = 50;
    private static final int FRAMES_PER_LOOK = 10;
    private static final int COUNTS = 1_200_000;

    private final SmallInstrument instrument;
    private final PseudoTerminal terminal;
    private final int samplesAFrameTime;
    private final BeaconDecoder decoder = new BeaconDecoder();
    private final byte[] heard = new byte[4_096];
    private BeaconState shown = BeaconState.FAULT;

    /** @param samplesAFrameTime in 50 ms; a multiple of 25 */
    SteadyFeed(SmallInstrument instrument, PseudoTerminal terminal, int samplesAFrameTime) {
        this.instrument = instrument;
        this.terminal = terminal;
        this.samplesAFrameTime = samplesAFrameTime;
    }

    BeaconState shown() {
        return shown;
    }

    void until(String what, Callable<Boolean> isSo) throws Exception {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(30);
        do {
            assertTrue(System.nanoTime() < end, "waited in vain for " + what);
            frames(FRAMES_PER_LOOK);
        } while (!isSo.call());
    }

    void forSeconds(int seconds) throws Exception {
        frames((int) (1_000L * seconds / FRAME_MILLIS));
    }

    private void frames(int n) throws Exception {
        for (int k = 0; k < n; k++) {
            terminal.write(instrument.hold(COUNTS, samplesAFrameTime).take());
            decoder.feed(heard, 0, terminal.read(heard), this);
            TimeUnit.MILLISECONDS.sleep(FRAME_MILLIS);
        }
    }

    @Override
    public void beacon(int seq, BeaconState state) {
        shown = state;
    }

    @Override
    public void rejected(FrameFault fault) {
        throw new AssertionError(fault);
    }
}
