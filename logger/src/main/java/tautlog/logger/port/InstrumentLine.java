package tautlog.logger.port;

/** An open line to the instrument. One thread reads, one writes, any closes. */
public interface InstrumentLine extends AutoCloseable {
    /** What {@link #read} gives when the other end is gone. */
    int GONE = -1;

    /**
     * Waits for bytes, 0.1 s at most.
     *
     * @return how many of {@code into} were filled; 0 when none came in time; {@link #GONE} when the other end is gone or
     *     this line was closed
     */
    int read(byte[] into);

    /** Writes the first {@code n} bytes; waits as long as the other end takes none, until the line is closed. */
    void write(byte[] bytes, int n);

    @Override
    void close();
}
