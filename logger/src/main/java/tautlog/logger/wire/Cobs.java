package tautlog.logger.wire;

/**
 * Consistent overhead byte stuffing: takes the zeros out of a frame, so that a zero can end it. Source: S. Cheshire and
 * M. Baker, "Consistent Overhead Byte Stuffing", IEEE/ACM Transactions on Networking 7(2), 1999.
 *
 * <pre>
 *   11 22 00 33   ▶   03 11 22  02 33        each length byte: how far to the next one; a zero stands before that,
 *                     ──┬─────  ──┬──        unless the length is FF (254 bytes without a zero) or the end is reached
 * </pre>
 */
final class Cobs {
    static final int BAD = -1;
    private static final int FULL = 0xff;

    private Cobs() {}

    /**
     * Encodes {@code n} bytes of {@code plain} into {@code out} from {@code at}, without the zero that ends a frame.
     * After a full group at the end of the data no further length byte is written.
     *
     * @return the index behind the last byte written; at most n + 1 + n / 254 bytes
     */
    static int encode(byte[] plain, int n, byte[] out, int at) {
        int length = at;
        int to = at + 1;
        for (int i = 0; i < n; i++) {
            if (to - length == FULL) {
                out[length] = (byte) FULL;
                length = to++;
            }
            if (plain[i] == 0) {
                out[length] = (byte) (to - length);
                length = to++;
            } else {
                out[to++] = plain[i];
            }
        }
        out[length] = (byte) (to - length);
        return to;
    }

    /**
     * Decodes {@code coded[0]} to {@code coded[n - 1]}, which hold no zero, in place. A last group of length 01 after a
     * full group is accepted: some encoders write it.
     *
     * @return how many bytes came out, or {@link #BAD} when a length byte points beyond the end
     */
    static int decode(byte[] coded, int n) {
        int to = 0;
        int from = 0;
        while (from < n) {
            int length = coded[from] & 0xff;
            int next = from + length;
            if (next > n) {
                return BAD;
            }
            System.arraycopy(coded, from + 1, coded, to, length - 1);
            to += length - 1;
            if (length != FULL && next < n) {
                coded[to++] = 0;
            }
            from = next;
        }
        return to;
    }
}
