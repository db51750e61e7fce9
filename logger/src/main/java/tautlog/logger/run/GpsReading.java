package tautlog.logger.run;

import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tautlog.logger.config.GpsChoice;
import tautlog.logger.control.Status.GpsStatus;
import tautlog.logger.gps.GpsReceiver;
import tautlog.logger.port.InstrumentLine;
import tautlog.logger.port.InstrumentPort;
import tautlog.logger.port.SerialInstrumentPort;

/** The satellite receiver's thread: its port to a {@link GpsReceiver}. A receiver that is missing or mute stops nothing. */
final class GpsReading implements Runnable, LineReader.Listener {
    private static final Logger LOG = LoggerFactory.getLogger(GpsReading.class);
    private static final int WAITS_BEFORE_WORD = 20;

    private final InstrumentPort port;
    private final GpsReceiver receiver;
    private final LineReader reader;
    private int waits;

    GpsReading(GpsChoice choice, GpsReceiver receiver) {
        port = new SerialInstrumentPort(choice.port(), choice.baud());
        this.receiver = receiver;
        reader = new LineReader(port, LineReader.AtHangUp.REOPEN, this);
    }

    @Override
    public void run() {
        try {
            reader.runWhenThere();
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    /** Asks {@link #run} to return. */
    void stop() {
        reader.stop();
    }

    GpsStatus status() {
        long nanos = System.nanoTime();
        return new GpsStatus(
                port.name(),
                reader.isOpen(),
                receiver.utcMicros(nanos).isPresent(),
                receiver.place(nanos),
                nanos,
                receiver.rejected());
    }

    @Override
    public void opened(InstrumentLine line) {
        waits = 0;
        receiver.reset();
    }

    @Override
    public void bytes(byte[] bytes, int n) {
        receiver.feed(bytes, n, System.nanoTime());
    }

    @Override
    public void gone() {
        receiver.reset();
    }

    @Override
    public void waiting() {
        waits++; // the place grows old by itself
        if (waits == WAITS_BEFORE_WORD) {
            LOG.warn("no satellite receiver at {}; place and time are unknown until it is there", port.name());
        }
    }
}
