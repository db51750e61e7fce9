package tautlog.logger.run;

import tautlog.logger.config.ShaftChoice;
import tautlog.logger.control.Status.ShaftLine;
import tautlog.logger.instrument.shaft.ShaftSource;
import tautlog.logger.port.InstrumentLine;
import tautlog.logger.port.InstrumentPort;
import tautlog.logger.port.SerialInstrumentPort;

/** The shaft thread's work: reads the second port, also one that is not there yet. The tension never waits for it. */
final class ShaftReader implements Runnable {
    private final InstrumentPort port;
    private final ShaftSource source;
    private final LineReader reader;

    ShaftReader(ShaftChoice choice) {
        this(choice, new SerialInstrumentPort(choice.line()));
    }

    ShaftReader(ShaftChoice choice, InstrumentPort port) {
        this.port = port;
        source = new ShaftSource(choice.pulsesPerRevolution());
        reader = new LineReader(port, LineReader.AtHangUp.REOPEN, new Listener());
    }

    ShaftSource source() {
        return source;
    }

    ShaftLine status() {
        return new ShaftLine(port.name(), reader.isOpen(), reader.hangUps());
    }

    void stop() {
        reader.stop();
    }

    @Override
    public void run() {
        try {
            reader.runWhenThere();
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    private final class Listener implements LineReader.Listener {
        @Override
        public void opened(InstrumentLine line) {
            source.opened();
        }

        @Override
        public void bytes(byte[] bytes, int n) {
            source.bytes(System.nanoTime(), bytes, n);
        }

        @Override
        public void gone() {
            // what it does not tell is not known
        }

        @Override
        public void waiting() {
            source.bytes(System.nanoTime(), new byte[0], 0);
        }
    }
}
