package tautlog.desk.importing;

import java.util.Arrays;
import java.util.zip.CRC32;

/** Readings in the order of time. The arrays are the object's own and not to be changed. */
final class Readings {
    private final long[] micros;
    private final boolean microsAreUtc;
    private final int[] counts;
    private final int decimals;
    private final LeftOut leftOut;

    /**
     * @param micros when each was taken, in microseconds; never goes back
     * @param microsAreUtc whether they count from 1970-01-01T00:00Z, or else from an unknown moment
     * @param counts the indicator's digits without the point
     * @param decimals how many digits stood behind the point, 0 or more
     */
    Readings(long[] micros, boolean microsAreUtc, int[] counts, int decimals, LeftOut leftOut) {
        this.micros = micros;
        this.microsAreUtc = microsAreUtc;
        this.counts = counts;
        this.decimals = decimals;
        this.leftOut = leftOut;
    }

    long[] micros() {
        return micros;
    }

    boolean microsAreUtc() {
        return microsAreUtc;
    }

    int[] counts() {
        return counts;
    }

    int decimals() {
        return decimals;
    }

    LeftOut leftOut() {
        return leftOut;
    }

    /**
     * Lines that hold no reading.
     *
     * @param lines how many
     * @param firstLine number of the first of them
     * @param why what is wrong with the first; empty with none
     */
    record LeftOut(long lines, long firstLine, String why) {
        static final LeftOut NONE = new LeftOut(0, 0, "");
    }

    int size() {
        return counts.length;
    }

    /** The median time between neighbours in microseconds; needs two readings. */
    double medianSpacingMicros() {
        long[] spacings = new long[micros.length - 1];
        for (int i = 0; i < spacings.length; i++) {
            spacings[i] = micros[i + 1] - micros[i];
        }
        Arrays.sort(spacings);
        int middle = spacings.length / 2;
        return spacings.length % 2 == 1 ? spacings[middle] : (spacings[middle - 1] + spacings[middle]) / 2.0;
    }

    /** A number that is the same for the same readings, 32 bits: stands for the boot that no instrument told. */
    long fingerprint() {
        CRC32 crc = new CRC32();
        for (int i = 0; i < counts.length; i++) {
            update(crc, micros[i]);
            update(crc, counts[i]);
        }
        return crc.getValue();
    }

    private static void update(CRC32 crc, long value) {
        for (int shift = 0; shift < 64; shift += 8) {
            crc.update((int) (value >>> shift) & 0xFF);
        }
    }
}
