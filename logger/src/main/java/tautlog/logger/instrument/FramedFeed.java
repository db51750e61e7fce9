package tautlog.logger.instrument;

import tautlog.logger.beacon.BeaconSender;
import tautlog.logger.port.InstrumentLine;
import tautlog.logger.wire.FrameDecoder;
import tautlog.logger.wire.FrameEncoder;
import tautlog.logger.wire.LineCounts;
import tautlog.logger.wire.OutingAssembler;
import tautlog.logger.wire.OutingSink;

/** An instrument that speaks the framed wire format; it alone has lamps, so the beacon's states go to its line. */
public final class FramedFeed implements InstrumentFeed {
    private final BeaconSender beacon;
    private final FrameDecoder decoder = new FrameDecoder();
    private final OutingAssembler assembler;

    public FramedFeed(OutingSink outings, BeaconSender beacon) {
        this.beacon = beacon;
        assembler = new OutingAssembler(outings);
    }

    @Override
    public void opened(InstrumentLine line) {
        decoder.reset();
        assembler.opened();
        FrameEncoder encoder = new FrameEncoder();
        byte[] frame = new byte[FrameEncoder.LONGEST_FRAME];
        int[] seq = new int[1];
        beacon.sendTo(state -> line.write(frame, encoder.beacon(frame, 0, seq[0]++ & 0xff, state)));
    }

    @Override
    public void bytes(long nowNanos, byte[] bytes, int n) {
        assembler.arriving(nowNanos);
        decoder.feed(bytes, 0, n, assembler);
    }

    @Override
    public void gone() {
        beacon.sendTo(BeaconSender.Sink.NOWHERE);
    }

    @Override
    public LineCounts counts() {
        return assembler.counts();
    }

    @Override
    public void end() {
        assembler.end();
    }
}
