package tautlog.oracle;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import tautlog.detect.Finding;
import tautlog.detect.Finding.StallEnd;

/** The paragraph Stall. */
final class Stalls {
    private static final int LEAST_READINGS = 20;
    private static final double RECOVERED = 0.9;

    private final Line line;
    private final List<ShaftSpeed.Reading> readings;
    private final ShaftSpeed shaft;
    private final List<Finding.Pull> pulls;

    Stalls(Line line, ShaftSpeed shaft, List<Finding.Pull> pulls) {
        this.line = line;
        this.shaft = shaft;
        this.pulls = pulls;
        readings = shaft.readings();
    }

    List<Finding.Stall> all() {
        List<Finding.Stall> stalls = new ArrayList<>();
        int next = 0;
        boolean armed = true;
        while (next < readings.size()) {
            ShaftSpeed.Reading reading = readings.get(next);
            OptionalDouble baseline = baselineOfLow(reading);
            armed |= baseline.isEmpty();
            if (armed && baseline.isPresent() && isLoaded(reading)) {
                next = follow(next, baseline.getAsDouble(), stalls);
                // "After one that ended stopped the next opens only when a reading in between was not low"
                armed = stalls.get(stalls.size() - 1).ended() != StallEnd.STOPPED;
            } else {
                next++;
            }
        }
        return stalls;
    }

    /**
     * "A shaft reading … below stall_to (0.7) × the median of the readings in the 5 s before it (at least 20, median ≥ 60 rpm)
     * …. Baseline: that median."
     */
    private OptionalDouble baselineOfLow(ShaftSpeed.Reading reading) {
        long hz = line.data.instrument().tickHz();
        List<ShaftSpeed.Reading> before = shaft.within(reading.tick() - 5 * hz, reading.tick() - 1);
        if (before.size() < LEAST_READINGS) {
            return OptionalDouble.empty();
        }
        double median = ShaftSpeed.median(before);
        double low = line.settings.stallTo().doubleValue() * median;
        boolean isLow = median >= ShaftSpeed.TURNING && reading.rpm() < low;
        return isLow ? OptionalDouble.of(median) : OptionalDouble.empty();
    }

    /**
     * "… while the latest sample, not in a gap beyond bridge, has T ≥ pull_from"; "A stall belongs to a pull: the sample it sits at
     * lies between a pull's start and its end."
     */
    private boolean isLoaded(ShaftSpeed.Reading reading) {
        return reading.place() >= 0
                && !line.isBelow(reading.place(), line.settings.pullFromNewtons())
                && !isInLongGap(reading)
                && pulls.stream().anyMatch(pull -> isIn(pull, reading));
    }

    private boolean isIn(Finding.Pull pull, ShaftSpeed.Reading reading) {
        long number = line.number[reading.place()];
        return pull.startNumber() <= number && number <= pull.endNumber();
    }

    /**
     * "It is not in a gap beyond bridge when the gap after that sample is none or short; after the outing's last sample, when t is at
     * most N(bridge) nominal sample intervals after it."
     */
    private boolean isInLongGap(ShaftSpeed.Reading reading) {
        if (reading.place() < line.size - 1) {
            return line.isLong(line.gapBefore(reading.place() + 1));
        }
        // (t − t_last) / tick_hz > N(bridge) / (millihertz / 1000)
        BigInteger ticks = BigInteger.valueOf(reading.tick() - line.tick[reading.place()]);
        BigInteger allowed = BigInteger.valueOf(line.samplesIn(line.settings.bridgeSeconds()));
        return ticks.multiply(BigInteger.valueOf(line.data.instrument().rateMillihertz()))
                        .compareTo(allowed.multiply(
                                BigInteger.valueOf(line.data.instrument().tickHz() * 1_000)))
                > 0;
    }

    /** "Ends at a reading ≥ 0.9 × baseline (recovered), at 0 rpm (stopped) or with the pull (pull-ended)." */
    private int follow(int first, double baseline, List<Finding.Stall> stalls) {
        ShaftSpeed.Reading opening = readings.get(first);
        Finding.Pull pull =
                pulls.stream().filter(p -> isIn(p, opening)).findFirst().orElseThrow();
        double least = opening.rpm();
        for (int r = first; r < readings.size(); r++) {
            ShaftSpeed.Reading reading = readings.get(r);
            if (line.number[reading.place()] > pull.endNumber()) {
                break;
            }
            least = Math.min(least, reading.rpm());
            if (reading.rpm() == 0) {
                stalls.add(stall(opening, reading.tick(), StallEnd.STOPPED, least, baseline));
                return r + 1;
            }
            if (reading.rpm() >= RECOVERED * baseline) {
                stalls.add(stall(opening, reading.tick(), StallEnd.RECOVERED, least, baseline));
                return r + 1;
            }
        }
        long end = Math.max(opening.tick(), line.tick[line.placeOf(pull.endNumber())]);
        stalls.add(stall(opening, end, StallEnd.PULL_ENDED, least, baseline));
        return firstReadingAfter(pull, first);
    }

    private int firstReadingAfter(Finding.Pull pull, int first) {
        int r = first;
        while (r < readings.size() && line.number[readings.get(r).place()] <= pull.endNumber()) {
            r++;
        }
        return r;
    }

    private Finding.Stall stall(
            ShaftSpeed.Reading opening, long endTick, StallEnd ended, double least, double baseline) {
        return new Finding.Stall(
                line.number[opening.place()],
                opening.tick(),
                endTick,
                ended,
                least,
                baseline,
                line.count[opening.place()]);
    }
}
