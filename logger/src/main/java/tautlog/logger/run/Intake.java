package tautlog.logger.run;

import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import tautlog.logger.beacon.BeaconSender;
import tautlog.logger.live.LiveOutings;
import tautlog.logger.port.InstrumentLine;
import tautlog.logger.recorder.LiveEvents;
import tautlog.logger.wire.FrameDecoder;
import tautlog.logger.wire.FrameEncoder;
import tautlog.logger.wire.LineCounts;
import tautlog.logger.wire.OutingAssembler;

/**
 * What the reader thread does with bytes: decoder, assembler, outings, one batch for each read. Looks at the two clocks of
 * this computer, once a batch.
 */
final class Intake implements LineReader.Listener {
    private static final long LOOK_NANOS = 1_000_000_000L;

    private final LiveEvents events;
    private final LiveOutings outings;
    private final Marks marks;
    private final BeaconSender beacon;
    private final InstantSource clock;
    private final OutingAssembler assembler;
    private final FrameDecoder decoder = new FrameDecoder();
    private volatile LineCounts counts = LineCounts.NONE;
    private long countsNanos;

    Intake(LiveEvents events, LiveOutings outings, Marks marks, BeaconSender beacon, InstantSource clock) {
        this.events = events;
        this.outings = outings;
        this.marks = marks;
        this.beacon = beacon;
        this.clock = clock;
        assembler = new OutingAssembler(outings);
    }

    @Override
    public void opened(InstrumentLine line) {
        decoder.reset();
        FrameEncoder encoder = new FrameEncoder();
        byte[] frame = new byte[FrameEncoder.LONGEST_FRAME];
        int[] seq = new int[1];
        beacon.sendTo(state -> line.write(frame, encoder.beacon(frame, 0, seq[0]++ & 0xff, state)));
    }

    @Override
    public void bytes(byte[] bytes, int n) {
        long nowNanos = System.nanoTime();
        events.open(nowNanos);
        try {
            outings.arriving(nowNanos, ChronoUnit.MICROS.between(Instant.EPOCH, clock.instant()));
            marks.serve(outings);
            assembler.arriving(nowNanos);
            decoder.feed(bytes, 0, n, assembler);
            if (nowNanos - countsNanos >= LOOK_NANOS) {
                countsNanos = nowNanos;
                counts = assembler.counts();
            }
        } finally {
            events.shut();
        }
    }

    /** What was rejected and lost on the line, at most a second ago; any thread. */
    LineCounts counts() {
        return counts;
    }

    @Override
    public void gone() {
        beacon.sendTo(BeaconSender.Sink.NOWHERE);
        outings.lineGone(System.nanoTime());
    }

    @Override
    public void waiting() {
        bytes(new byte[0], 0);
        outings.lineGone(System.nanoTime());
    }

    /** Nothing more comes: ends the outing. */
    void end() {
        events.open(System.nanoTime());
        try {
            assembler.end();
            counts = assembler.counts();
        } finally {
            events.shut();
        }
    }
}
