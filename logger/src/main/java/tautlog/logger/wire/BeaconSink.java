package tautlog.logger.wire;

/** Takes the frames that a logger sends: the instrument's side. */
public interface BeaconSink extends FaultSink {
    void beacon(int seq, BeaconState state);
}
