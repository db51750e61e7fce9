package tautlog.logger.simulate.instrument;

/** Takes what the instrument sends. */
public interface ByteSink {
    /**
     * Some bytes, in order.
     *
     * @param bytes belongs to the caller, valid during the call
     * @param seconds since the start of the simulation
     */
    void send(byte[] bytes, int n, double seconds);
}
