package tautlog.logger.port;

/** The place where an instrument can be plugged in. */
public interface InstrumentPort {
    /** @throws PortException if it is missing, in use or not allowed; the message says what to do */
    InstrumentLine open() throws PortException;

    /** Its name for messages, {@code /dev/ttyACM0}. */
    String name();
}
