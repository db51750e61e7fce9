package tautlog.desk.pyramid;

import java.util.List;

/** Puts kept shaft speeds into a band, in revolutions per minute. */
final class ShaftReading {
    private ShaftReading() {}

    static void read(List<Levels> pieces, Scale scale, long begin, long end, Band band) {
        for (Levels levels : pieces) {
            int bucket = levels.buckets() == 0 ? 0 : levels.bucketAt(begin);
            for (; bucket < levels.buckets() && levels.tick(bucket) < end; bucket++) {
                long at = scale.axis().micros(levels.tick(bucket));
                long until = bucket + 1 < levels.buckets() ? scale.axis().micros(levels.tick(bucket + 1)) : at;
                band.add(
                        at,
                        until,
                        levels.least(0, bucket) / Extent.SHAFT_UNITS,
                        levels.greatest(0, bucket) / Extent.SHAFT_UNITS,
                        levels.present(bucket));
            }
        }
    }
}
