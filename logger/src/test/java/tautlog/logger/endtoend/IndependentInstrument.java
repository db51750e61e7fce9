package tautlog.logger.endtoend;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.zip.CRC32C;

/**
 * An instrument written from {@code firmware-notes/wire.md} alone: it shares no line with the logger's encoder or decoder
 * and keeps its own account of what it sent, lost and spoiled.
 */
final class IndependentInstrument {
    static final int RATE_HZ = 500;
    static final int TICK_HZ = 1_000_000;
    static final int TICKS_PER_SAMPLE = TICK_HZ / RATE_HZ;
    static final int FULL_SCALE = 2_500_000;
    static final int PULSES_PER_REVOLUTION = 6;
    static final int SAMPLES_PER_FRAME = 25;
    /** The counter wraps 20 s after the first sample. */
    static final long FIRST_TICK = (1L << 32) - 20L * TICK_HZ;

    static final int FIRST_NUMBER = 1_000;

    /** What happens to one tension frame on its way. */
    enum Fate {
        ARRIVES(true),
        NEVER_SENT(false),
        CRC_SPOILED(false),
        CUT_SHORT(false),
        SENT_TWICE(true),
        GARBAGE_BEFORE(true);

        final boolean arrives;

        Fate(boolean arrives) {
            this.arrives = arrives;
        }
    }

    private final ByteArrayOutputStream line = new ByteArrayOutputStream();
    private final Random random = new Random(20260504);
    private int sequence;
    private long pulses;
    private double phase;
    private boolean[] arrived = new boolean[0];
    private int[] bytesBefore = new int[0];

    int lostFrames;
    int spoiledFrames;
    int cutFrames;
    int repeatedFrames;
    int garbagePieces;

    /** Sends the whole drawing. */
    void send(Drawing drawing) {
        int samples = drawing.samples();
        arrived = new boolean[samples];
        bytesBefore = new int[samples];
        List<Long> pulseTicks = new ArrayList<>();
        hello(0);
        switches(0, drawing);
        for (int from = 0; from < samples; from += SAMPLES_PER_FRAME) {
            bytesBefore[from] = line.size();
            int n = Math.min(SAMPLES_PER_FRAME, samples - from);
            Fate fate = drawing.fates[from / SAMPLES_PER_FRAME];
            meets(fate, tension(drawing.counts, from, n));
            for (int k = from; k < from + n; k++) {
                arrived[k] = fate.arrives;
                turn(drawing.rpm[k], k, pulseTicks);
            }
            between(from + n, drawing, pulseTicks);
        }
    }

    private void meets(Fate fate, byte[] frame) {
        switch (fate) {
            case ARRIVES:
                put(frame);
                break;
            case NEVER_SENT:
                lostFrames++;
                break;
            case CRC_SPOILED:
                put(spoiled(frame));
                spoiledFrames++;
                break;
            case CUT_SHORT:
                // the frame's middle is gone, its closing zero is not: the remains are one piece
                put(cut(frame));
                cutFrames++;
                break;
            case GARBAGE_BEFORE:
                garbage(100);
                put(frame);
                break;
            case SENT_TWICE:
                put(frame);
                put(frame);
                repeatedFrames++;
                break;
        }
    }

    /** The frames of other kinds that are due before sample {@code done}. */
    private void between(int done, Drawing drawing, List<Long> pulseTicks) {
        if (done % (RATE_HZ / 10) == 0) {
            shaft(done, pulseTicks);
        }
        if (done % RATE_HZ == 0) {
            hello(done);
            health(done);
        }
        if (done % RATE_HZ == 0 || drawing.switches.containsKey(done)) {
            switches(done, drawing);
        }
    }

    /** Whether each sample reached the line unharmed. */
    boolean[] arrived() {
        return arrived;
    }

    /** What is sent before {@code sample}, the first of a frame. */
    byte[] bytesBefore(int sample) {
        return Arrays.copyOf(bytes(), bytesBefore[sample]);
    }

    /** What is sent from {@code sample}, the first of a frame, on. */
    byte[] bytesFrom(int sample) {
        return Arrays.copyOfRange(bytes(), bytesBefore[sample], line.size());
    }

    /** Bytes that no frame begins or ends in, closed by a zero: one rejected piece. */
    private void garbage(int length) {
        for (int i = 0; i < length; i++) {
            line.write(1 + random.nextInt(255));
        }
        line.write(0);
        garbagePieces++;
    }

    byte[] bytes() {
        return line.toByteArray();
    }

    private void turn(double rpm, int sample, List<Long> pulseTicks) {
        double step = rpm / 60.0 * PULSES_PER_REVOLUTION / RATE_HZ;
        double before = phase;
        phase += step;
        for (double next = Math.floor(before) + 1; next <= phase; next++) {
            double part = (next - before) / step;
            pulseTicks.add(Math.round((sample + part) * TICKS_PER_SAMPLE));
            pulses++;
        }
    }

    private byte[] tension(int[] counts, int from, int n) {
        ByteBuffer b = body(0x02, 10 + 3 * n);
        b.putInt((int) (FIRST_TICK + (long) from * TICKS_PER_SAMPLE));
        b.putInt(FIRST_NUMBER + from);
        int flags = 0;
        for (int k = from; k < from + n; k++) {
            flags |= counts[k] >= FULL_SCALE ? 1 : 0;
        }
        b.put((byte) flags).put((byte) n);
        for (int k = from; k < from + n; k++) {
            b.put((byte) counts[k]).put((byte) (counts[k] >> 8)).put((byte) (counts[k] >> 16));
        }
        return frame(b);
    }

    private void shaft(int sample, List<Long> pulseTicks) {
        long now = (long) sample * TICKS_PER_SAMPLE;
        // a pulse that falls on or after "now" waits for the next frame
        List<Long> due = pulseTicks.stream().filter(t -> t <= now).toList();
        pulseTicks.removeIf(t -> t <= now);
        ByteBuffer b = body(0x03, 9 + 3 * due.size());
        b.putInt((int) (FIRST_TICK + now))
                .putInt((int) (pulses - pulseTicks.size()))
                .put((byte) due.size());
        for (long tick : due) {
            long age = now - tick;
            b.put((byte) age).put((byte) (age >> 8)).put((byte) (age >> 16));
        }
        put(frame(b));
    }

    private void hello(int sample) {
        ByteBuffer b = body(0x01, 33);
        b.put((byte) 1).put((byte) 2).put((byte) 5);
        b.put("E2E-0001".getBytes(StandardCharsets.US_ASCII));
        b.putInt(77)
                .putInt((int) (FIRST_TICK + (long) sample * TICKS_PER_SAMPLE))
                .putInt(TICK_HZ);
        b.putInt(RATE_HZ * 1_000).putInt(FULL_SCALE).putShort((short) PULSES_PER_REVOLUTION);
        put(frame(b));
    }

    private void health(int sample) {
        ByteBuffer b = body(0x04, 12);
        b.putInt((int) (FIRST_TICK + (long) sample * TICKS_PER_SAMPLE));
        b.putShort((short) 12_600).putShort((short) 215).putInt(3);
        put(frame(b));
    }

    /** An INPUT frame with all three switches present; none when the instrument has no switches. */
    private void switches(int sample, Drawing drawing) {
        var stand = drawing.switches.floorEntry(sample);
        if (stand == null) {
            return;
        }
        ByteBuffer b = body(0x05, 7);
        b.putInt((int) (FIRST_TICK + (long) sample * TICKS_PER_SAMPLE));
        b.put((byte) stand.getValue().selector()).put((byte) 0b111).put((byte)
                stand.getValue().state());
        put(frame(b));
    }

    private ByteBuffer body(int kind, int payload) {
        ByteBuffer b = ByteBuffer.allocate(2 + payload + 4).order(ByteOrder.LITTLE_ENDIAN);
        return b.put((byte) kind).put((byte) sequence++);
    }

    private static byte[] frame(ByteBuffer b) {
        CRC32C crc = new CRC32C();
        crc.update(b.array(), 0, b.position());
        b.putInt((int) crc.getValue());
        return stuff(b.array());
    }

    /** COBS by its definition: each zero, and one imagined after the end, becomes the distance from the zero before. */
    private static byte[] stuff(byte[] plain) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        int from = 0;
        for (int k = 0; k <= plain.length; k++) {
            if (k == plain.length || plain[k] == 0) {
                out.write(k - from + 1);
                out.write(plain, from, k - from);
                from = k + 1;
            }
        }
        out.write(0);
        return out.toByteArray();
    }

    private static byte[] spoiled(byte[] frame) {
        byte[] bad = frame.clone();
        // the count of samples is at a known place and never zero on the line: turn one bit of the byte after it
        for (int k = 20; k < bad.length - 1; k++) {
            byte turned = (byte) (bad[k] ^ 0x40);
            if (bad[k] > 2 && turned != 0 && isData(frame, k)) {
                bad[k] = turned;
                return bad;
            }
        }
        throw new AssertionError("no byte to spoil");
    }

    /** True when position k of an encoded frame is a data byte, no distance byte. */
    private static boolean isData(byte[] frame, int k) {
        int at = 0;
        while (at < k) {
            at += frame[at] & 0xff;
        }
        return at != k;
    }

    private static byte[] cut(byte[] frame) {
        byte[] remains = new byte[frame.length / 2];
        System.arraycopy(frame, 0, remains, 0, remains.length - 1);
        return remains;
    }

    private void put(byte[] bytes) {
        line.writeBytes(bytes);
    }
}
