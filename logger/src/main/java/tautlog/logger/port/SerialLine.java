package tautlog.logger.port;

import com.fazecast.jSerialComm.SerialPort;

/** An open serial port. Reading blocks in the system: event mode spins after a hang-up, so it is not used. */
final class SerialLine implements InstrumentLine {
    private final SerialPort port;

    SerialLine(SerialPort port) {
        this.port = port;
    }

    @Override
    public int read(byte[] into) {
        int n = port.readBytes(into, into.length);
        return n < 0 ? GONE : n;
    }

    @Override
    public void write(byte[] bytes, int n) {
        port.writeBytes(bytes, n);
    }

    @Override
    public void close() {
        port.closePort();
    }
}
