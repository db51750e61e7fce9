package tautlog.logger.cli;

import java.io.ByteArrayOutputStream;
import tautlog.logger.wire.FrameEncoder;
import tautlog.sample.Instrument;

/** An instrument at work for hours: 50 samples a second, each minute a haul with a snap beyond the limit of 20 kN. */
final class LongOuting {
    static final int HERTZ = 50;
    private static final int FRAME = 25;
    private static final Instrument INSTRUMENT =
            new Instrument("TL-0001", 1, 0, 77, 1_000_000, HERTZ * 1_000L, 8_388_607, 6);

    private final FrameEncoder encoder = new FrameEncoder();
    private final byte[] frame = new byte[FrameEncoder.LONGEST_FRAME];
    private long number;
    private int seq;

    /** The bytes of its next second. */
    byte[] nextSecond() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        send(bytes, encoder.hello(frame, 0, seq, INSTRUMENT, tick() & 0xffff_ffffL));
        for (int at = 0; at < HERTZ; at += FRAME) {
            int[] counts = new int[FRAME];
            for (int i = 0; i < FRAME; i++) {
                counts[i] = count(number + i);
            }
            send(bytes, encoder.tension(frame, 0, seq, tick() & 0xffff_ffffL, number, 0, counts, 0, FRAME));
            number += FRAME;
        }
        return bytes.toByteArray();
    }

    private long tick() {
        return 1_000_000 + number * (1_000_000 / HERTZ);
    }

    private static int count(long number) {
        long inMinute = number % (60 * HERTZ);
        int noise = (int) (number * 7919 % 17) - 8;
        if (inMinute < 20 * HERTZ) {
            return noise;
        }
        return (inMinute < 20 * HERTZ + 60 ? 2_500_000 : inMinute < 50 * HERTZ ? 1_200_000 : 0) + noise;
    }

    private void send(ByteArrayOutputStream bytes, int n) {
        seq = seq + 1 & 0xff;
        bytes.write(frame, 0, n);
    }
}
