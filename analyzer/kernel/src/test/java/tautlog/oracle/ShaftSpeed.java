package tautlog.oracle;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import tautlog.detect.Finding.ShaftAfterDrop;

/**
 * Shaft readings: from wire.md's formula, and as the paragraphs Pull, Drop and Stall use them. "Speeds in rpm are doubles,
 * computed as the formula of wire.md stands (60 · tick_hz first, then one division), and compared as such."
 */
final class ShaftSpeed {
    static final double TURNING = 60;

    private final Line line;
    private final List<Reading> readings = new ArrayList<>();

    /** @param place of the sample it sits at; below 0 when it sits before the first */
    record Reading(long tick, double rpm, int place) {
        boolean isTurning() {
            return rpm >= TURNING;
        }
    }

    ShaftSpeed(Line line) {
        this.line = line;
        readAll();
    }

    List<Reading> readings() {
        return readings;
    }

    List<Answers.Reading> told() {
        return readings.stream()
                .map(r -> new Answers.Reading(r.tick(), r.rpm()))
                .toList();
    }

    private long tickHz() {
        return line.data.instrument().tickHz();
    }

    /** "one per SHAFT frame, frames less than 50 ms after the last reading give none". */
    private void readAll() {
        List<OutingData.ShaftFrame> frames = line.data.shafts();
        List<Long> train = new ArrayList<>();
        long trainFrom = 0;
        for (int f = 0; f < frames.size(); f++) {
            OutingData.ShaftFrame frame = frames.get(f);
            // "The first SHAFT frame of an outing comes after a gap in the pulse train"; "A jump in pulses beyond n is
            // a gap".
            if (f == 0
                    || frame.pulses() - frames.get(f - 1).pulses()
                            > frame.pulseTicks().size()) {
                train.clear();
                trainFrom = frame.tick();
            }
            train.addAll(frame.pulseTicks());
            if (readings.isEmpty()
                    || 20 * (frame.tick() - readings.get(readings.size() - 1).tick()) >= tickHz()) {
                OptionalDouble rpm = rpm(frame.tick(), train, trainFrom);
                rpm.ifPresent(speed -> readings.add(new Reading(frame.tick(), speed, placeAt(frame.tick()))));
            }
        }
    }

    /**
     * wire.md: "Shaft speed at time t = 60 · tick_hz / (t_m − t_(m − ppr)), over one whole revolution …; t_m the latest pulse at or
     * before t; but never more than 60 · tick_hz / (ppr · (t − t_m)), and 0 when t − t_m > 1 s".
     *
     * <p>"with fewer than one revolution of known pulses since a gap in the pulse train there is no reading, except 0 when the last
     * pulse (or, with none, the first SHAFT frame after the gap) is more than 1 s ago."
     */
    private OptionalDouble rpm(long t, List<Long> train, long trainFrom) {
        int ppr = line.data.instrument().pulsesPerRevolution();
        if (ppr == 0) {
            return OptionalDouble.empty();
        }
        long lastPulse = train.isEmpty() ? trainFrom : train.get(train.size() - 1);
        if (t - lastPulse > tickHz()) {
            return OptionalDouble.of(0);
        }
        if (train.size() < ppr + 1) {
            return OptionalDouble.empty();
        }
        double minuteTicks = 60.0 * tickHz();
        long turn = lastPulse - train.get(train.size() - 1 - ppr);
        if (turn == 0) {
            // "Two pulses a revolution apart at one tick give no reading."
            return OptionalDouble.empty();
        }
        double overOneTurn = minuteTicks / turn;
        return OptionalDouble.of(
                t == lastPulse ? overOneTurn : Math.min(overOneTurn, minuteTicks / (ppr * (t - lastPulse))));
    }

    /** "A shaft reading at tick t sits at the latest present sample with a tick ≤ t (… before the first sample sits before it)". */
    private int placeAt(long t) {
        int place = line.size - 1;
        while (place >= 0 && line.tick[place] > t) {
            place--;
        }
        return place;
    }

    /**
     * "it speaks for the sample numbers after the one it sits at, up to and including the one the next reading sits at, but for at
     * most N(1 s) numbers."
     *
     * @return of the numbers from {@code start} to {@code end}, those for which a turning or a standing reading speaks
     */
    long samplesSpokenFor(long start, long end, boolean turning) {
        long sum = 0;
        for (int r = 0; r < readings.size(); r++) {
            if (readings.get(r).isTurning() == turning) {
                long after = numberAt(readings.get(r));
                long last = after + line.samplesIn("1");
                if (r + 1 < readings.size()) {
                    last = Math.min(last, numberAt(readings.get(r + 1)));
                }
                sum += Math.max(0, Math.min(last, end) - Math.max(after + 1, start) + 1);
            }
        }
        return sum;
    }

    private long numberAt(Reading reading) {
        return reading.place() < 0 ? line.first() - 1 : line.number[reading.place()];
    }

    List<Reading> within(long fromTick, long toTick) {
        List<Reading> within = new ArrayList<>();
        for (Reading reading : readings) {
            if (fromTick <= reading.tick() && reading.tick() <= toTick) {
                within.add(reading);
            }
        }
        return within;
    }

    /** "the median of an even number averages the middle two". */
    static double median(List<Reading> some) {
        double[] sorted = some.stream().mapToDouble(Reading::rpm).sorted().toArray();
        return (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
    }

    /** "before = readings with tick in (t_i − 1 s, t_i], after = (t_i, t_i + 1 s]"; then "the first that holds of …". */
    ShaftAfterDrop afterDrop(long tickOfStart) {
        List<Reading> before = within(tickOfStart - tickHz() + 1, tickOfStart);
        List<Reading> after = within(tickOfStart + 1, tickOfStart + tickHz());
        if (before.size() < 5 || after.size() < 5) {
            return ShaftAfterDrop.UNKNOWN;
        }
        double median = median(before);
        if (median < TURNING) {
            return ShaftAfterDrop.STILL;
        }
        if (after.stream().anyMatch(r -> !r.isTurning())) {
            return ShaftAfterDrop.STOPPED;
        }
        boolean ranUp = after.stream().anyMatch(r -> r.rpm() > 1.1 * median);
        return ranUp ? ShaftAfterDrop.RAN_UP : ShaftAfterDrop.KEPT_TURNING;
    }
}
