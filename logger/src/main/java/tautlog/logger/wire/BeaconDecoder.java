package tautlog.logger.wire;

import static tautlog.logger.wire.LittleEndian.u8;

/** Finds a logger's frames in a stream of bytes: what an instrument, or its simulator, listens to. Not thread-safe. */
public final class BeaconDecoder extends FrameReader<BeaconSink> {
    private static final BeaconState[] STATES = BeaconState.values();

    @Override
    void frame(byte[] f, int payload, BeaconSink sink) {
        if (u8(f, 0) != FrameKind.BEACON) {
            sink.rejected(FrameFault.UNKNOWN_KIND);
        } else if (payload != FrameKind.BEACON_PAYLOAD) {
            sink.rejected(FrameFault.BAD_LENGTH);
        } else if (u8(f, FrameKind.HEAD) >= STATES.length) {
            sink.rejected(FrameFault.BAD_VALUE);
        } else {
            sink.beacon(u8(f, 1), STATES[u8(f, FrameKind.HEAD)]);
        }
    }
}
