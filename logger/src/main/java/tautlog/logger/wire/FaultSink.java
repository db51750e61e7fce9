package tautlog.logger.wire;

/** Is told of every piece between zeros that is no frame. */
public interface FaultSink {
    /** One piece was skipped; called once for each, never for an empty one. */
    void rejected(FrameFault fault);
}
