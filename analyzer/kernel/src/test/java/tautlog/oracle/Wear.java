package tautlog.oracle;

import java.util.ArrayList;
import java.util.List;
import tautlog.detect.Known;

/** The paragraph Hours, as far as it is more than sums: the times between shaft readings that wear the joint. */
final class Wear {
    private final Line line;
    private final List<ShaftSpeed.Reading> readings;
    private final Drops drops;

    Wear(Line line, ShaftSpeed shaft) {
        this.line = line;
        readings = shaft.readings();
        drops = new Drops(line, shaft);
    }

    /**
     * "summed over the intervals between two shaft readings (at most 1 s), n the earlier reading, M from the greatest tension in
     * the interval"; its samples are those for which the earlier reading speaks. Without a driveline nobody asks.
     */
    List<Answers.Interval> all() {
        List<Answers.Interval> intervals = new ArrayList<>();
        if (line.isEmpty() || line.data.rig().driveline().isEmpty()) {
            return intervals;
        }
        for (int r = 0; r + 1 < readings.size(); r++) {
            long after = numberAt(readings.get(r));
            long last = Math.min(numberAt(readings.get(r + 1)), after + line.samplesIn("1"));
            int from = line.firstPlaceFrom(after + 1);
            int to = line.firstPlaceFrom(last + 1) - 1;
            intervals.add(new Answers.Interval(
                    readings.get(r + 1).tick() - readings.get(r).tick(),
                    readings.get(r).rpm(),
                    to - from + 1,
                    from <= to ? line.count[line.greatest(from, to)] : 0,
                    clutch(after, last)));
        }
        return intervals;
    }

    private long numberAt(ShaftSpeed.Reading reading) {
        return reading.place() < 0 ? line.first() - 1 : line.number[reading.place()];
    }

    /** "The clutch of an interval is unknown when it changes in it." */
    private Known clutch(long from, long to) {
        Known known = drops.clutchAt(from);
        for (OutingData.Input input : line.data.inputs()) {
            boolean isInside = from < input.atNumber() && input.atNumber() <= to;
            if (isInside && drops.clutchAt(input.atNumber()) != known) {
                return Known.UNKNOWN;
            }
        }
        return known;
    }
}
