package tautlog.oracle;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import tautlog.detect.Second;

/** The paragraph Seconds. */
final class SecondsTold {
    private final Line line;
    private final ShaftSpeed shaft;

    SecondsTold(Line line, ShaftSpeed shaft) {
        this.line = line;
        this.shaft = shaft;
    }

    /** "only present samples. A second with no present sample gives none." */
    List<Second> all() {
        List<Second> seconds = new ArrayList<>();
        int place = 0;
        while (place < line.size) {
            int last = place;
            while (last + 1 < line.size && secondOf(line.number[last + 1]) == secondOf(line.number[place])) {
                last++;
            }
            seconds.add(second(place, last));
            place = last + 1;
        }
        return seconds;
    }

    /** "Number n is in second floor((n − first) / f), f exact in millihertz". */
    private long secondOf(long number) {
        return Math.floorDiv(
                (number - line.first()) * 1_000, line.data.instrument().rateMillihertz());
    }

    private Second second(int from, int to) {
        long index = secondOf(line.number[from]);
        long sum = 0;
        int share = from;
        for (int i = from; i <= to; i++) {
            sum += line.count[i];
            share = line.compareShares(i, share) > 0 ? i : share;
        }
        return new Second(
                index,
                line.number[from],
                line.leastCount(from, to),
                line.count[line.greatest(from, to)],
                sum,
                to - from + 1,
                shaftRpm(from, to),
                line.hookup[share].id(),
                line.tension[share]
                        .divide(line.limit[share], java.math.MathContext.DECIMAL64)
                        .doubleValue(),
                flags(index, from, to),
                line.countSquares(from, to));
    }

    /** "Shaft speed is the mean m of the readings that sit in it, to 0.1 rpm: ⌊10 · m + 0.5⌋ / 10; unknown with none." */
    private OptionalDouble shaftRpm(int from, int to) {
        OptionalDouble mean = shaft.readings().stream()
                .filter(r -> from <= r.place() && r.place() <= to)
                .mapToDouble(r -> r.rpm())
                .average();
        return mean.isEmpty() ? mean : OptionalDouble.of(Math.floor(10 * mean.getAsDouble() + 0.5) / 10);
    }

    /** "Flags: gap (a number of the second between the outing's first and last is missing), end stop, open bridge, over …". */
    private int flags(long index, int from, int to) {
        int flags = 0;
        for (int i = from; i <= to; i++) {
            flags |= line.isAtEndStop(i) ? Second.END_STOP : 0;
            flags |= line.isAbove(i, line.limit[i]) ? Second.OVER_LIMIT : 0;
            flags |= line.hookup[i].limit().isAtMost() ? Second.AT_MOST : 0;
        }
        // every number of the second: on both sides of its present ones as far as the second goes
        long first = line.number[from];
        while (first > line.first() && secondOf(first - 1) == index) {
            first--;
        }
        for (long n = first; n <= line.last() && secondOf(n) == index; n++) {
            flags |= line.isPresent(n) ? 0 : Second.GAP;
        }
        for (OutingData.Frame frame : line.data.frames()) {
            if (frame.isOpenBridge() && secondOf(frame.number()) <= index && secondOf(frame.lastNumber()) >= index) {
                flags |= Second.OPEN_BRIDGE;
            }
        }
        return flags;
    }
}
