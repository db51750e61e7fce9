package tautlog.desk.pyramid;

import java.io.DataInput;
import java.io.DataOutput;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Least and greatest of buckets in order, and of each 8 of them, and so on. Grows at its end. One thread. */
final class Levels {
    /** How many buckets make one of the next level. */
    static final int FAN = 8;

    private long[] ticks = new long[16];
    private int[] present = new int[16];
    private final List<Extremes> levels = new ArrayList<>(List.of(new Extremes()));
    private int buckets;
    /** So many buckets of level 0 are summed up in the levels above. */
    private int summed;

    /** One level; a bucket without anything present has its least above its greatest. */
    private static final class Extremes {
        private int[] least = new int[16];
        private int[] greatest = new int[16];

        void room(int n) {
            if (n > least.length) {
                least = Arrays.copyOf(least, Math.max(n, least.length + least.length / 2));
                greatest = Arrays.copyOf(greatest, least.length);
            }
        }

        void set(int bucket, int low, int high) {
            least[bucket] = low;
            greatest[bucket] = high;
        }
    }

    int buckets() {
        return buckets;
    }

    int levels() {
        sum();
        return levels.size();
    }

    /** How many buckets level {@code level} has. */
    int buckets(int level) {
        int n = buckets;
        for (int i = 0; i < level; i++) {
            n = (n + FAN - 1) / FAN;
        }
        return n;
    }

    /** Appends a bucket that holds nothing yet. */
    void append(long tick) {
        if (buckets == ticks.length) {
            ticks = Arrays.copyOf(ticks, buckets + buckets / 2);
            present = Arrays.copyOf(present, ticks.length);
        }
        levels.get(0).room(buckets + 1);
        ticks[buckets] = tick;
        present[buckets] = 0;
        levels.get(0).set(buckets, Integer.MAX_VALUE, Integer.MIN_VALUE);
        buckets++;
    }

    /** {@code n} values more in the last bucket. */
    void add(int least, int greatest, int n) {
        Extremes base = levels.get(0);
        int last = buckets - 1;
        base.set(last, Math.min(base.least[last], least), Math.max(base.greatest[last], greatest));
        present[last] += n;
        summed = Math.min(summed, last);
    }

    /** The tick of the last bucket, once it is known better. */
    void tickOfLast(long tick) {
        ticks[buckets - 1] = tick;
    }

    /** When the first value of a bucket of level 0 was taken. */
    long tick(int bucket) {
        return ticks[bucket];
    }

    int present(int bucket) {
        return present[bucket];
    }

    int least(int level, int bucket) {
        return levels.get(level).least[bucket];
    }

    int greatest(int level, int bucket) {
        return levels.get(level).greatest[bucket];
    }

    /** The last bucket of level 0 that begins at {@code tick} or before; 0 when all begin later. */
    int bucketAt(long tick) {
        int found = Arrays.binarySearch(ticks, 0, buckets, tick);
        return Math.max(0, found >= 0 ? found : -found - 2);
    }

    private void sum() {
        if (summed == buckets) {
            return;
        }
        int from = summed;
        for (int level = 1; buckets(level - 1) > 1; level++) {
            if (levels.size() == level) {
                levels.add(new Extremes());
            }
            from /= FAN;
            sum(levels.get(level - 1), buckets(level - 1), levels.get(level), from, buckets(level));
        }
        summed = buckets;
    }

    private static void sum(Extremes below, int n, Extremes into, int from, int to) {
        into.room(to);
        for (int bucket = from; bucket < to; bucket++) {
            int least = Integer.MAX_VALUE;
            int greatest = Integer.MIN_VALUE;
            for (int i = bucket * FAN; i < Math.min(n, (bucket + 1) * FAN); i++) {
                least = Math.min(least, below.least[i]);
                greatest = Math.max(greatest, below.greatest[i]);
            }
            into.set(bucket, least, greatest);
        }
    }

    void write(DataOutput out) throws IOException {
        out.writeInt(buckets);
        for (int i = 0; i < buckets; i++) {
            out.writeLong(ticks[i]);
            out.writeInt(present[i]);
            out.writeInt(levels.get(0).least[i]);
            out.writeInt(levels.get(0).greatest[i]);
        }
    }

    static Levels read(DataInput in) throws IOException {
        Levels read = new Levels();
        int n = in.readInt();
        for (int i = 0; i < n; i++) {
            read.append(in.readLong());
            int there = in.readInt();
            read.add(in.readInt(), in.readInt(), there);
        }
        return read;
    }
}
