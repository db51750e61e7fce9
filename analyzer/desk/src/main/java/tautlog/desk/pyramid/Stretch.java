package tautlog.desk.pyramid;

import java.io.DataInput;
import java.io.DataOutput;
import java.io.IOException;

/**
 * A stretch of an outing under one zero and without a long gap: bucket i of its levels holds the samples with numbers {@code first} +
 * 1,024·i on.
 */
final class Stretch {
    static final int SAMPLES = 1_024;

    final long first;
    /** By how many counts the zero was moved; meaningless while none was {@link #isZeroTold}. */
    final int zeroShift;

    final boolean isZeroTold;
    final Levels levels;
    /** The number after its last sample. */
    long next;
    /** One sample's time after its last sample. */
    long endTick;

    Stretch(long first, int zeroShift, boolean isZeroTold, Levels levels) {
        this.first = first;
        this.zeroShift = zeroShift;
        this.isZeroTold = isZeroTold;
        this.levels = levels;
        next = first;
    }

    /**
     * Takes samples of a frame.
     *
     * @param number of the first, at or above {@link #next}
     * @param ticks when a sample of the frame was taken
     */
    void add(long number, int[] counts, int from, int n, Ticks ticks) {
        for (int done = 0; done < n; ) {
            long at = number + done;
            int bucket = bucketOf(at);
            while (levels.buckets() <= bucket) {
                levels.append(ticks.of(done));
            }
            int until = (int) Math.min(n, first + (bucket + 1L) * SAMPLES - number);
            if (levels.present(bucket) == 0) {
                levels.tickOfLast(ticks.of(done));
            }
            add(counts, from + done, until - done);
            done = until;
        }
        next = number + n;
        endTick = ticks.of(n);
    }

    private void add(int[] counts, int from, int n) {
        int least = Integer.MAX_VALUE;
        int greatest = Integer.MIN_VALUE;
        for (int i = from; i < from + n; i++) {
            least = Math.min(least, counts[i]);
            greatest = Math.max(greatest, counts[i]);
        }
        levels.add(least, greatest, n);
    }

    private int bucketOf(long number) {
        return (int) ((number - first) / SAMPLES);
    }

    /** How many samples a bucket would hold if none were missing. */
    int expected(int bucket) {
        return (int) Math.min(SAMPLES, next - first - (long) bucket * SAMPLES);
    }

    /** The tick after what a bucket of level 0 holds. */
    long endOf(int bucket) {
        return bucket + 1 < levels.buckets() ? levels.tick(bucket + 1) : endTick;
    }

    /** When sample {@code k} from where the adding begins was taken. */
    interface Ticks {
        long of(int k);
    }

    void write(DataOutput out) throws IOException {
        out.writeLong(first);
        out.writeInt(zeroShift);
        out.writeBoolean(isZeroTold);
        out.writeLong(next);
        out.writeLong(endTick);
        levels.write(out);
    }

    static Stretch read(DataInput in) throws IOException {
        long first = in.readLong();
        int shift = in.readInt();
        boolean told = in.readBoolean();
        long next = in.readLong();
        long end = in.readLong();
        Stretch read = new Stretch(first, shift, told, Levels.read(in));
        read.next = next;
        read.endTick = end;
        return read;
    }
}
