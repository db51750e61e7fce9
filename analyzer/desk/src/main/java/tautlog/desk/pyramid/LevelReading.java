package tautlog.desk.pyramid;

import java.util.List;

/** Puts the buckets of one level into a band. */
final class LevelReading {
    private final Scale scale;
    private final Band band;
    private final int level;
    private final int fan;

    LevelReading(Scale scale, Band band, int level) {
        this.scale = scale;
        this.band = band;
        this.level = level;
        fan = (int) Math.pow(Levels.FAN, level);
    }

    void read(List<Stretch> stretches, long begin, long end) {
        Stretch before = null;
        for (Stretch stretch : stretches) {
            long first = stretch.levels.tick(0);
            if (before != null && stretch.first > before.next) {
                band.missing(micros(before.endTick), micros(first));
            }
            if (stretch.endTick > begin && first < end) {
                read(stretch, begin, end);
            }
            before = stretch;
        }
    }

    private void read(Stretch stretch, long begin, long end) {
        Scale.Under under = scale.under(stretch);
        Levels levels = stretch.levels;
        int top = Math.min(level, levels.levels() - 1);
        int width = top == level ? fan : (int) Math.pow(Levels.FAN, top);
        for (int bucket = levels.bucketAt(begin) / width; bucket < levels.buckets(top); bucket++) {
            int from = bucket * width;
            if (levels.tick(from) >= end) {
                return;
            }
            read(stretch, under, top, bucket, from, Math.min(levels.buckets(), from + width));
        }
    }

    private void read(Stretch stretch, Scale.Under under, int top, int bucket, int from, int to) {
        Levels levels = stretch.levels;
        long present = 0;
        boolean isWhole = true;
        for (int i = from; i < to; i++) {
            present += levels.present(i);
            isWhole &= levels.present(i) == stretch.expected(i);
        }
        long at = micros(levels.tick(from));
        long until = micros(stretch.endOf(to - 1));
        if (!isWhole) {
            band.missing(at, until);
        }
        if (present > 0) {
            band.add(
                    at,
                    until,
                    under.newtons(levels.least(top, bucket)),
                    under.newtons(levels.greatest(top, bucket)),
                    present);
        }
    }

    private long micros(long tick) {
        return scale.axis().micros(tick);
    }
}
