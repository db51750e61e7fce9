package tautlog.logger.publish.mqtt;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/**
 * What a broker sends, with bounds: no packet beyond {@link #LONGEST_PACKET}, no more than {@link #MOST_BYTES} in {@link
 * #WINDOW_NANOS}. Source of the header: MQTT 3.1.1, 2.2.3.
 */
final class PacketBound extends FilterInputStream {
    /** Chosen: acknowledgements hold 2 to 4 bytes. */
    static final int LONGEST_PACKET = 1_024;
    /** Chosen: twenty times what acknowledges the fastest catching up. */
    static final int MOST_BYTES = 1 << 20;

    static final long WINDOW_NANOS = 10_000_000_000L;

    private static final int HEAD = 0;
    private static final int LENGTH = 1;
    private static final int BODY = 2;

    private int part = HEAD;
    private int left;
    private int shift;
    private long windowNanos = System.nanoTime();
    private long bytes;

    PacketBound(InputStream in) {
        super(in);
    }

    @Override
    public int read() throws IOException {
        int b = super.read();
        if (b >= 0) {
            take(b);
        }
        return b;
    }

    @Override
    public int read(byte[] into, int at, int most) throws IOException {
        int n = super.read(into, at, most);
        for (int i = 0; i < n; i++) {
            take(into[at + i] & 0xFF);
        }
        return n;
    }

    private void take(int b) throws IOException {
        count();
        switch (part) {
            case HEAD -> {
                part = LENGTH;
                left = 0;
                shift = 0;
            }
            case LENGTH -> {
                left |= (b & 0x7F) << shift;
                shift += 7;
                if (left > LONGEST_PACKET || (shift > 21 && b >= 0x80)) {
                    throw new IOException("the broker sends a packet of more than " + LONGEST_PACKET + " bytes");
                }
                if (b < 0x80) {
                    part = left == 0 ? HEAD : BODY;
                }
            }
            default -> {
                if (--left == 0) {
                    part = HEAD;
                }
            }
        }
    }

    private void count() throws IOException {
        if (++bytes > MOST_BYTES) {
            long now = System.nanoTime();
            if (now - windowNanos < WINDOW_NANOS) {
                throw new IOException("the broker sends without end");
            }
            windowNanos = now;
            bytes = 0;
        }
    }
}
